/**
 * The hand on the Piece bench while the remedies of 36 bands are worked out, on
 * a processor four times as slow: 300 frames, in each of which the pointer goes
 * to another stitch that is read out. They begin once the piece and the cards of
 * what was found stand, and none of the remedies is there; these come in
 * between, and are shown. Long tasks are those that the browser itself tells: a
 * trace holds up what it is taken of. Of several rounds the best counts, of each
 * thing its own: what else the machine does only ever makes a round slower, and a
 * frame that waited for it is late by no work of the page.
 *
 * Beside them the least that there is: a page with a canvas and a line of text,
 * beside a worker that is busy as long, and shows as much of what it brings.
 */
import type { Page } from 'playwright';
import { findingWords } from '@shared/words/findings.ts';
import { words } from '@shared/words/index.ts';
import { quantile, type Bar } from './bar.ts';
import { bareChart } from './bare-chart.ts';
import { withWindows } from './built-window.ts';
import { fullBody } from '../long-body.ts';
import { drawingBox } from './moves.ts';
import { MOST_MS } from './tasks.ts';
import { settled } from '../written-projects.ts';

const BANDS = 36;
const FRAMES = 300;
const FIRST_FRAMES = 8;
const SLOW_DOWN = 4;
const ROUNDS = 5;
const MOST_TRIES = 12;
/** Whichever helps most stands first. */
const REMEDIES = 'aside .remedy';
const REMEDY = `${REMEDIES} button`;
/** Of a screen that shows 60 frames a second, and a little. */
const MOST_FRAME_MS = 20;

/** Of each: from one frame to the next, ms. */
interface Frames {
  readonly meanwhile: readonly number[];
  /** Once the remedies are there. */
  readonly after: readonly number[];
  /** Of the bare page. */
  readonly bare: readonly number[];
  /** The longest task meanwhile, ms; 0 where none took {@link MOST_MS}, as the browser tells no shorter ones. */
  readonly longestMs: number;
}

/** Waits until what was found stands in the panel: of many findings the first dozen. */
async function cardsAreThere(page: Page): Promise<void> {
  await page.waitForFunction(
    (cards) => {
      const labels = [...document.querySelectorAll(cards)].map((card) => card.getAttribute('aria-label') ?? '');
      const count = Number(/\d+$/.exec(labels[0] ?? '')?.[0] ?? Infinity);
      return labels.length >= Math.min(12, count);
    },
    'aside .found',
    { polling: 50 },
  );
}

export async function remediesBars(): Promise<Bar[]> {
  return withWindows(async (open) => {
    /** Opens windows until what is done in one was begun before the remedies were there. */
    async function meanwhile<T>(act: (page: Page) => Promise<T>): Promise<T> {
      for (let tries = 0; tries < MOST_TRIES; tries++) {
        const page = await open(settled(fullBody(BANDS)).whole);
        await page.keyboard.press('2');
        await page.getByRole('heading', { name: words.piece.before.title }).waitFor();
        const line = page.getByRole('group', { name: findingWords.line.label });
        await line.getByRole('button', { expanded: false }).click();
        await cardsAreThere(page);
        // The first frames are slower, since every canvas is drawn for the first time.
        await follow(page, FIRST_FRAMES);
        await slowDown(page);
        const acted = (await page.locator(REMEDY).count()) === 0 ? { as: await act(page) } : null;
        await page.context().close();
        if (acted) return acted.as;
      }
      throw new Error('The remedies were always there before the first frame');
    }
    const rounds: Frames[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      rounds.push(
        await meanwhile(async (page) => {
          await page.evaluate(observeLongTasks);
          const busy = page.evaluate(untilThere, REMEDY);
          const frames = await follow(page, FRAMES);
          const busyMs = await busy;
          const longestMs = await page.evaluate(longestSince);
          const after = await follow(page, FRAMES);
          return { meanwhile: frames, after, bare: await ofBarePage(page, busyMs), longestMs };
        }),
      );
    }
    const late = (times: readonly number[]): number => quantile(times, 0.95);
    const compared = (ms: number, most: number) => ({ ratio: ms / most, ours: ms, against: most });
    const of = (which: Exclude<keyof Frames, 'longestMs'>): number =>
      Math.min(...rounds.map((frames) => late(frames[which])));
    const asTheyCome = `while remedies of ${BANDS} bands are worked out, ${SLOW_DOWN} × slower`;
    return [
      {
        name: `95 of 100 frames of the Piece bench ${asTheyCome}, against ${MOST_FRAME_MS} ms`,
        kind: 'at most',
        limit: 1,
        ...compared(of('meanwhile'), MOST_FRAME_MS),
      },
      {
        name: 'the same frames against those that follow, with nothing to be worked out',
        kind: 'figure',
        limit: null,
        ratio: of('meanwhile') / of('after'),
        ours: of('meanwhile'),
        against: of('after'),
      },
      {
        name: `the same frames of a bare page beside a worker that is busy as long, against ${MOST_FRAME_MS} ms`,
        kind: 'figure',
        limit: null,
        ...compared(of('bare'), MOST_FRAME_MS),
      },
      {
        name: `the longest task of the window ${asTheyCome}, against ${MOST_MS} ms (0: the browser tells of none so long)`,
        kind: 'at most',
        limit: 1,
        ...compared(Math.min(...rounds.map(({ longestMs }) => longestMs)), MOST_MS),
      },
    ];
  });
}

async function slowDown(page: Page): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
}

interface WithLongTasks {
  longTasks?: { readonly told: number[]; readonly observer: PerformanceObserver };
}

/** In the page: notes from now on what the browser tells of long tasks, ms. */
function observeLongTasks(): void {
  const told: number[] = [];
  const observer = new PerformanceObserver((list) => told.push(...list.getEntries().map(({ duration }) => duration)));
  observer.observe({ type: 'longtask' });
  (window as WithLongTasks).longTasks = { told, observer };
}

/** In the page: the longest of them; 0 where there was none. */
function longestSince(): number {
  const { told, observer } = (window as WithLongTasks).longTasks as Required<WithLongTasks>['longTasks'];
  told.push(...observer.takeRecords().map(({ duration }) => duration));
  observer.disconnect();
  return Math.max(0, ...told);
}

/** In the page: how long it takes from now on until something is there, ms. */
function untilThere(selector: string): Promise<number> {
  const from = performance.now();
  return new Promise((resolve) => {
    const timer = setInterval(() => {
      if (document.querySelector(selector) === null) return;
      clearInterval(timer);
      resolve(performance.now() - from);
    }, 20);
  });
}

/** Follows the pointer over a bare page, whose worker makes objects for so long; then what `page` shows of its own is shown, piece by piece. */
async function ofBarePage(page: Page, busyMs: number): Promise<number[]> {
  const pieces = await page.locator(REMEDIES).evaluateAll((shown) => shown.map(({ outerHTML }) => outerHTML));
  const bare = await bareChart(page, { box: await drawingBox(page), cell: 8, paints: false });
  await bare.locator('canvas').evaluate((canvas) => canvas.setAttribute('data-drawing', ''));
  await follow(bare, FIRST_FRAMES);
  await slowDown(bare);
  await bare.evaluate(
    ({ busyMs, pieces }) => {
      const aside = document.body.appendChild(document.createElement('aside'));
      aside.style.cssText = 'position:absolute;top:0;right:0;width:320px';
      const script = `const from = performance.now();
        let made = [];
        while (performance.now() - from < ${busyMs}) {
          made = [];
          for (let at = 0; at < 5000; at++) made.push({ at });
        }
        postMessage(made.length);`;
      const worker = new Worker(URL.createObjectURL(new Blob([script])));
      worker.onmessage = () => {
        for (const piece of pieces) setTimeout(() => aside.insertAdjacentHTML('beforeend', piece));
      };
    },
    { busyMs, pieces },
  );
  return follow(bare, FRAMES);
}

/** Moves the pointer over the piece, frame after frame, and gives what passed between them, ms. */
async function follow(page: Page, frames: number): Promise<number[]> {
  return page.evaluate(async (count) => {
    const stage = document.querySelector('[data-drawing]') as HTMLElement;
    const { left, top, width, height } = stage.getBoundingClientRect();
    const times: number[] = [];
    let last = await new Promise(requestAnimationFrame);
    for (let frame = 0; frame < count; frame++) {
      const clientX = left + width * (0.5 + 0.3 * Math.sin(frame / 11));
      const clientY = top + height * (0.5 + 0.3 * Math.cos(frame / 17));
      const event = { clientX, clientY, bubbles: true, pointerId: 1, pointerType: 'mouse' };
      stage.dispatchEvent(new PointerEvent('pointermove', event));
      const now = await new Promise(requestAnimationFrame);
      times.push(now - last);
      last = now;
    }
    return times;
  }, frames);
}
