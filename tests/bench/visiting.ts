/**
 * Going from bench to bench in the built window: what the main thread works from
 * the key to the bench as it stays, the first time, once the drawing was looked
 * at, and again, against a page that is given the same bench as finished markup,
 * with canvases of its sizes.
 */
import type { Page } from 'playwright';
import { sampleProject } from '@shared/project/index.ts';
import { median, type Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { roundsOf } from './slowed.ts';
import { tasksOf } from './tasks.ts';

/** A hand that rests so long has had the other benches made ready (`window/prepare-at-rest.ts`). */
export const LOOKED_AT_MS = 4000;

const ROUNDS = 5;
/** What is worked out and put together, beside what any page has to lay out and paint. */
const MOST = 3;

interface Visit {
  readonly name: string;
  readonly key: string;
  /** What stands once the bench is there. */
  readonly shows: string;
}

const PIECE: Visit = { name: 'Piece', key: '2', shows: 'aside .found, aside h2' };
const MOTIF: Visit = { name: 'Motif', key: '1', shows: '[role=grid]' };
const SHEET: Visit = { name: 'Sheet', key: '3', shows: '[data-drawing] [role=document]' };

/** Resolves once nothing is left that the page does by itself. */
export async function atRest(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let frame = 0; frame < 3; frame++) await new Promise(requestAnimationFrame);
    // A machine with much else to do may never be idle.
    await new Promise((resolve) => requestIdleCallback(resolve, { timeout: 1000 }));
  });
}

async function workOf(page: Page, act: () => Promise<unknown>): Promise<number> {
  const tasks = await tasksOf(page, async () => {
    await act();
    await atRest(page);
  });
  return tasks.reduce((sum, { workedMs }) => sum + workedMs, 0);
}

function go(page: Page, { key, shows }: Visit): () => Promise<void> {
  return async () => {
    const isThere = page.waitForFunction((shown) => document.querySelector(shown) !== null, shows);
    await page.keyboard.press(key);
    await isThere;
  };
}

/** What a page works that has nothing but the looks of the window, and puts the bench in at once. */
export async function leastFor(page: Page): Promise<number> {
  const { looks, markup, canvases } = await page.evaluate(() => ({
    looks: [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules].map((rule) => rule.cssText)).join('\n'),
    markup: document.querySelector('main')?.outerHTML ?? '',
    canvases: [...document.querySelectorAll('main canvas')].map((canvas) => {
      const { width, height } = canvas as HTMLCanvasElement;
      return { width, height };
    }),
  }));
  const bare = await page.context().newPage();
  await bare.setContent(`<!doctype html><style>${looks}</style><body></body>`);
  await bare.evaluate('globalThis.__name = (named) => named');
  await bare.bringToFront();
  await atRest(bare);
  const work = await workOf(bare, () =>
    bare.evaluate(
      ({ markup, canvases }) => {
        document.body.innerHTML = markup;
        for (const [index, canvas] of document.querySelectorAll('canvas').entries()) {
          Object.assign(canvas, canvases[index]);
          canvas.getContext('2d')?.fillRect(0, 0, canvas.width, canvas.height);
        }
      },
      { markup, canvases },
    ),
  );
  await bare.close();
  await page.bringToFront();
  return work;
}

export async function visitingBars(): Promise<Bar[]> {
  return withWindows(async (open) => {
    const first = { piece: [] as number[], sheet: [] as number[] };
    const again = { piece: [] as number[], motif: [] as number[] };
    const least = { piece: [] as number[], motif: [] as number[], sheet: [] as number[] };
    for (let round = 0; round < roundsOf(ROUNDS); round++) {
      const page = await open(sampleProject());
      await atRest(page);
      least.motif.push(await leastFor(page));
      await page.waitForTimeout(LOOKED_AT_MS);
      first.piece.push(await workOf(page, go(page, PIECE)));
      least.piece.push(await leastFor(page));
      again.motif.push(await workOf(page, go(page, MOTIF)));
      again.piece.push(await workOf(page, go(page, PIECE)));
      first.sheet.push(await workOf(page, go(page, SHEET)));
      least.sheet.push(await leastFor(page));
      await page.context().close();
    }
    const bar = ({ name }: Visit, how: string, ours: readonly number[], against: readonly number[]): Bar => ({
      name: `the ${name} bench, ${how}, against a page that is given it as finished markup`,
      kind: 'at most',
      limit: MOST,
      ratio: median(ours) / median(against),
      ours: median(ours),
      against: median(against),
    });
    return [
      bar(PIECE, 'for the first time', first.piece, least.piece),
      bar(PIECE, 'again', again.piece, least.piece),
      bar(MOTIF, 'again', again.motif, least.motif),
      bar(SHEET, 'for the first time', first.sheet, least.sheet),
    ];
  });
}
