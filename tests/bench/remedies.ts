/**
 * The hand on the Piece bench while the remedies of 36 bands are worked out, on
 * a processor four times as slow: 300 frames, in each of which the pointer goes
 * to another stitch that is read out. They begin once the piece and the cards of
 * what was found stand, and none of the remedies is there; these come in
 * between, and are shown.
 */
import type { Page } from 'playwright';
import { findingWords } from '@shared/words/findings.ts';
import { words } from '@shared/words/index.ts';
import { median, quantile, type Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { fullBody } from '../long-body.ts';
import { MOST_MS, tasksOf, type Task } from './tasks.ts';
import { settled } from '../written-projects.ts';

const BANDS = 36;
const FRAMES = 300;
const FIRST_FRAMES = 8;
const SLOW_DOWN = 4;
const ROUNDS = 3;
const MOST_TRIES = 12;
/** Whichever helps most stands first. */
const REMEDY = 'aside .remedy button';
/** Of a screen that shows 60 frames a second, and a little. */
const MOST_FRAME_MS = 20;

interface Round {
  /** From each frame to the next, ms. */
  readonly frames: readonly number[];
  /** The same once the remedies are there. */
  readonly after: readonly number[];
  readonly tasks: readonly Task[];
}

/**
 * Waits for the first of them. Not by its role: to work out the roles and names
 * of all that stands there takes the page longer than what is measured.
 */
async function remedyIsThere(page: Page): Promise<void> {
  await page.waitForFunction((remedy) => document.querySelector(remedy) !== null, REMEDY, { polling: 250 });
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
    const rounds: Round[] = [];
    for (let tries = 0; rounds.length < ROUNDS; tries++) {
      if (tries === MOST_TRIES) throw new Error('The remedies were always there before the first frame');
      const page = await open(settled(fullBody(BANDS)).whole);
      const devtools = await page.context().newCDPSession(page);
      await page.keyboard.press('2');
      await page.getByRole('heading', { name: words.piece.before.title }).waitFor();
      await page.getByRole('group', { name: findingWords.line.label }).getByRole('button', { expanded: false }).click();
      await cardsAreThere(page);
      // The first frames are slower, since every canvas is drawn for the first time.
      await follow(page, FIRST_FRAMES);
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
      const remedies = page.locator(REMEDY);
      if ((await remedies.count()) === 0) {
        let frames: number[] = [];
        const tasks = await tasksOf(page, async () => {
          frames = await follow(page, FRAMES);
          await remedyIsThere(page);
        });
        rounds.push({ frames, after: await follow(page, FRAMES), tasks });
      }
      await page.context().close();
    }
    const late = (times: readonly number[]): number => quantile(times, 0.95);
    const compared = (ms: number, most: number) => ({ ratio: ms / most, ours: ms, against: most });
    const longest = (of: keyof Task): number =>
      median(rounds.map(({ tasks }) => Math.max(...tasks.map((task) => task[of]))));
    const meanwhile = `while remedies of ${BANDS} bands are worked out, ${SLOW_DOWN} × slower`;
    return [
      {
        name: `95 of 100 frames of the Piece bench ${meanwhile}, against ${MOST_FRAME_MS} ms`,
        kind: 'at most',
        limit: 1,
        ...compared(median(rounds.map(({ frames }) => late(frames))), MOST_FRAME_MS),
      },
      {
        name: 'the same frames against those that follow, with nothing to be worked out',
        kind: 'figure',
        limit: null,
        ratio: median(rounds.map(({ frames, after }) => late(frames) / late(after))),
        ours: median(rounds.map(({ frames }) => late(frames))),
        against: median(rounds.map(({ after }) => late(after))),
      },
      {
        name: `the longest task of the window ${meanwhile}, against ${MOST_MS} ms`,
        kind: 'at most',
        limit: 1,
        ...compared(longest('ms'), MOST_MS),
      },
      {
        name: 'what the longest of them has worked, the time left out in which a busy machine let it wait',
        kind: 'figure',
        limit: null,
        ...compared(longest('workedMs'), MOST_MS),
      },
    ];
  });
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
