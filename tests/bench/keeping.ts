/**
 * Keeping unsaved work aside that has 23 MB of pictures to trace, in the built
 * window: the longest task from the end of a stroke until the host has it, the
 * first time, when the pictures are given to it, and after the next stroke.
 */
import type { Page } from 'playwright';
import { CALL_PATH } from '@shared/host/sealed/call-head.ts';
import { makeGrid } from '@shared/grid/index.ts';
import { UNDERLAY_SIDE, type Motif, type Underlay } from '@shared/motif/index.ts';
import { projectAround, START_YARNS, type Project } from '@shared/project/index.ts';
import { noisyPhoto } from '../e2e/noisy-photo.ts';
import type { Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { longestBars } from './longest.ts';
import { drawingBox } from './moves.ts';
import { freeHand, roundsOf } from './slowed.ts';
import { tasksSince, type Task } from './tasks.ts';

const MOST_MS = 10;
const ROUNDS = 4;
const PICTURES = 8;
/** Of all pictures together. */
const MEGABYTES = 23;
const SIDE = 40;
/** Until the window has kept what was drawn. */
const REST_MS = 1500;
const MOST_TRIES = 6;

/** A motif for each picture; the one that is drawn on has one too. */
function tracedProject(): Project {
  const drawn = projectAround('Traced', 'drawn', makeGrid(SIDE, SIDE), 0, 'worn', START_YARNS);
  const [motif] = drawn.motifs;
  if (!motif) throw new Error('A project has a motif');
  const photo = noisyPhoto(UNDERLAY_SIDE, UNDERLAY_SIDE, 50);
  const letters = (MEGABYTES * 1e6) / PICTURES;
  const underlay = (at: number): Underlay => {
    // What stands behind the end of a JPEG is not looked at: so each picture is another, and as long as wanted.
    const bytes = Buffer.concat([photo, Buffer.alloc(Math.max(1, Math.floor((letters * 3) / 4) - photo.length), at)]);
    const picture = `data:image/jpeg;base64,${bytes.toString('base64')}`;
    return { picture, left: 0, bottom: 0, columns: SIDE, rows: SIDE, opacity: 0.5, isShown: true, turn: 0 };
  };
  const motifs = Array.from({ length: PICTURES }, (_, at): Motif => ({
    ...motif,
    id: at === 0 ? motif.id : `other-${at}`,
    underlay: underlay(at),
  }));
  return { ...drawn, motifs };
}

/**
 * Draws, and waits until the host has it by the method of its that is named. Null where a busy
 * machine drew so slowly that the window began to keep it before all was drawn.
 */
async function keptTasks(page: Page, method: string, row: number): Promise<Task[] | null> {
  let isBehind = false;
  const tasks = await tasksSince(page, async (fromNow) => {
    const { x, y, width, height } = await drawingBox(page);
    const isKept = page.waitForResponse((response) => response.url().endsWith(CALL_PATH + method));
    await page.mouse.move(x + width / 2, y + height / 2 + row);
    await page.mouse.down();
    await page.mouse.move(x + width / 2 + 40, y + height / 2 + row);
    await page.mouse.up();
    // Work is kept a fifth of a second after the first change: the stroke is on the screen before.
    await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
    await fromNow();
    const from = await page.evaluate(() => performance.timeOrigin + performance.now());
    const kept = await isKept;
    isBehind = kept.request().timing().startTime >= from;
    await page.evaluate(() => new Promise(requestAnimationFrame));
  });
  // What else is to be kept is on its way, and is no part of the next stroke.
  await page.waitForTimeout(REST_MS);
  return isBehind ? tasks : null;
}

/** The same of the first stroke that was drawn quickly enough. */
async function keptAgain(page: Page): Promise<Task[]> {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const tasks = await keptTasks(page, 'recovery.append', 60 + 10 * tries);
    if (tasks) return tasks;
  }
  throw new Error('The machine is too busy: a stroke was never drawn within a fifth of a second');
}

export async function keepingBars(): Promise<Bar[]> {
  return withWindows(async (open) => {
    const project = tracedProject();
    const first: Task[][] = [];
    const again: Task[][] = [];
    for (let round = 0; round < roundsOf(ROUNDS); round++) {
      const page = await open(project);
      // What comes a moment after a project is opened is over.
      await page.waitForTimeout(REST_MS);
      await freeHand(page);
      const atFirst = await keptTasks(page, 'recovery.keep', 0);
      if (atFirst) first.push(atFirst);
      again.push(await keptAgain(page));
      await page.context().close();
    }
    if (first.length === 0)
      throw new Error('The machine is too busy: no first stroke was drawn in a fifth of a second');
    const what = `while unsaved work with ${MEGABYTES} MB of traced pictures is kept`;
    return [
      ...longestBars(`${what} for the first time`, MOST_MS, first),
      ...longestBars(`${what} after another stroke`, MOST_MS, again),
    ];
  });
}
