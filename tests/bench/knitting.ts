/**
 * Rows counted on a piece of 200 × 1000, in the built window: what the page
 * works from the key to the painted row, that it is written down included, on a
 * processor four times as slow, against one frame of the screen; and what it
 * keeps in memory after a thousand rows, against two hundred.
 */
import type { Page } from 'playwright';
import { fullBody } from '../long-body.ts';
import { meterOf, type Meter } from '../soak/memory.ts';
import { settled } from '../written-projects.ts';
import { median, quantile, type Bar } from './bar.ts';
import { withWindows, type OpenWindow } from './built-window.ts';
import { betweenMarks, MARKS } from './tasks.ts';

const BANDS = 36;
const ROUNDS = 5;
/** Rows of a round: more than a pattern is high, and its plain rows. */
const ROWS = 40;
/** Multiplied, and not asked of Chromium: its slow-down counts the time as well in which a busy machine let the page wait. */
const SLOW_DOWN = 4;
/** Of a screen of 60 frames a second. */
const FRAME_MS = 1000 / 60;
/** Memory is looked at after so many rows, and at the end. */
const SOON = 200;
const LAST = 1000;
/** What the collector leaves over differs by some of this. */
const MOST_GROWTH = 1.1;

export async function knittingBars(): Promise<Bar[]> {
  return withWindows(async (open) => [...(await rowBars(open)), ...(await memoryBars(open))]);
}

async function rowBars(open: OpenWindow): Promise<Bar[]> {
  const ours = await openOnNeedles(open);
  const markup = await recorded(ours);
  const bare = await bareWith(ours, markup);
  const press = { ours: await pressesOf(ours), bare: await pressesOf(bare) };
  const late: Record<'ours' | 'bare' | 'waited', number[]> = { ours: [], bare: [], waited: [] };
  for (let round = -1; round < ROUNDS; round++) {
    for (const [name, page] of Object.entries({ ours, bare }) as ['ours' | 'bare', Page][]) {
      await page.bringToFront();
      const rows = await betweenMarks(page, () => press[name](ROWS));
      if (rows.length !== ROWS) throw new Error(`${rows.length} of ${ROWS} rows were painted`);
      // The first round is for the compiler.
      if (round < 0) continue;
      const lateOf = (of: 'ms' | 'workedMs'): number =>
        quantile(
          rows.map((row) => row[of]),
          0.95,
        );
      late[name].push(lateOf('workedMs'));
      if (name === 'ours') late.waited.push(lateOf('ms'));
    }
  }
  await ours.context().close();
  const [worked, waited] = [SLOW_DOWN * median(late.ours), median(late.waited)];
  return [
    {
      name: `what the page works from key to painted row on a piece of 200 × 1000, ${SLOW_DOWN} × slower, 95 of 100 rows, against one frame`,
      kind: 'at most',
      limit: 1,
      ratio: worked / FRAME_MS,
      ours: worked,
      against: FRAME_MS,
    },
    {
      name: 'the same against a page that is given the row as finished markup',
      kind: 'figure',
      limit: null,
      ratio: median(late.ours.map((ms, round) => ms / (late.bare[round] as number))),
      ours: worked,
      against: SLOW_DOWN * median(late.bare),
    },
    {
      name: 'what passes meanwhile as fast as the machine is, that it waits for the disk, for its frame and for others included, against one frame',
      kind: 'figure',
      limit: null,
      ratio: waited / FRAME_MS,
      ours: waited,
      against: FRAME_MS,
    },
  ];
}

async function memoryBars(open: OpenWindow): Promise<Bar[]> {
  const page = await openOnNeedles(open);
  const meter: Meter = await meterOf(page);
  await knitTo(page, SOON);
  const soon = await meter();
  await knitTo(page, LAST);
  const last = await meter();
  await page.context().close();
  const about = `after ${LAST} rows of a piece of 200 × 1000, against ${SOON} rows`;
  return [
    {
      name: `what the page keeps in memory ${about}`,
      kind: 'at most',
      limit: MOST_GROWTH,
      ratio: last.heapMb / soon.heapMb,
      ours: last.heapMb,
      against: soon.heapMb,
      unit: 'MB',
    },
    {
      name: `nodes of the page ${about}`,
      kind: 'at most',
      limit: MOST_GROWTH,
      ratio: last.nodes / soon.nodes,
      ours: last.nodes,
      against: soon.nodes,
      unit: 'nodes',
    },
  ];
}

async function openOnNeedles(open: OpenWindow): Promise<Page> {
  const page = await open(settled(fullBody(BANDS)).whole);
  await page.bringToFront();
  await page.getByRole('button', { name: 'Knit', exact: true }).click();
  await page.getByRole('button', { name: 'Row done' }).waitFor();
  return page;
}

/** Presses the large button until the counter reads so many. */
async function knitTo(page: Page, rows: number): Promise<void> {
  await page.evaluate(async (to) => {
    const reads = (): number => Number(document.querySelector('.reading')?.textContent);
    while (reads() < to) {
      const before = reads();
      const isShown = new Promise<void>((resolve) => {
        const looking = new MutationObserver(() => {
          if (reads() === before) return;
          looking.disconnect();
          resolve();
        });
        looking.observe(document.body, { subtree: true, childList: true, characterData: true });
      });
      document.querySelector<HTMLElement>('[data-ends-row]')?.click();
      await isShown;
    }
  }, rows);
}

/** The bench as markup, row by row. */
async function recorded(page: Page): Promise<string[]> {
  const markup: string[] = [];
  for (let row = 1; row <= ROWS; row++) {
    await knitTo(page, row);
    markup.push(await page.evaluate(() => document.querySelector('main')?.outerHTML ?? ''));
  }
  return markup;
}

/** A page with nothing but the looks of `page`, which shows the next of these at each key, over and over. */
async function bareWith(page: Page, markup: readonly string[]): Promise<Page> {
  const looks = await page.evaluate(() =>
    [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules].map((rule) => rule.cssText)).join('\n'),
  );
  const bare = await page.context().newPage();
  await bare.setContent(`<!doctype html><style>${looks}</style><body>${markup[0]}</body>`);
  // What is handed to the page has gone through a compiler that asks for this.
  await bare.evaluate('globalThis.__name = (named) => named');
  await bare.evaluate((rows) => {
    let next = 0;
    window.addEventListener('keydown', () => {
      next = (next + 1) % rows.length;
      (document.querySelector('main') as HTMLElement).outerHTML = rows[next] as string;
    });
  }, markup);
  return bare;
}

/** Presses the key of a foot pedal so many times, each once the row before is painted; what is timed is marked. */
async function pressesOf(page: Page): Promise<(rows: number) => Promise<void>> {
  let painted = (): void => undefined;
  await page.exposeFunction('rowIsPainted', () => painted());
  await page.evaluate(({ from, to }) => {
    const { rowIsPainted } = globalThis as unknown as { rowIsPainted: () => void };
    const reads = (): string => document.querySelector('.reading')?.textContent ?? '';
    let before = reads();
    new MutationObserver(() => {
      if (reads() === before) return;
      before = reads();
      requestAnimationFrame(() => {
        // The next task after a frame begins once the page has handed it over.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          performance.mark(to);
          rowIsPainted();
        };
        port2.postMessage(null);
      });
    }).observe(document.documentElement, { subtree: true, childList: true, characterData: true });
    window.addEventListener('keydown', () => performance.mark(from), true);
  }, MARKS);
  return async (rows) => {
    for (let row = 0; row < rows; row++) {
      const isPainted = new Promise<void>((resolve) => (painted = resolve));
      await page.keyboard.press('PageDown');
      await isPainted;
    }
  };
}
