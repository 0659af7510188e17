/**
 * The sheet in the built window, of 3, 43 and 76 pages: how soon its first page
 * is there, the first time and again, and the longest that the window is busy
 * with one thing meanwhile and while the paper is changed. Beside it what a page
 * works that is given the same bench as finished markup.
 */
import type { Page } from 'playwright';
import { words } from '@shared/words/index.ts';
import { settled } from '../written-projects.ts';
import type { Bar } from './bar.ts';
import { withWindows, type OpenWindow } from './built-window.ts';
import { longestBars } from './longest.ts';
import { projectOfPages } from './sheet.ts';
import { roundsOf } from './slowed.ts';
import { MOST_MS, tasksOf, type Task } from './tasks.ts';
import { atRest, leastFor, LOOKED_AT_MS } from './visiting.ts';

const PAGES = [3, 43, 76];
const ROUNDS = 3;
/** Going away and coming back, in each round. */
const RETURNS = 3;
const FIRST_MS = 100;
const AGAIN_MS = 10;

/** Of each round the least, which a busy machine has held up least. */
interface Seen {
  /** From the key until the first page is painted whole, ms. */
  first: number;
  /** What the main thread worked until it was at rest when it had been seen before, ms. */
  again: number;
  /** What a page works that is given the bench as finished markup, ms. */
  least: number;
  readonly tasks: {
    readonly first: (readonly Task[])[];
    readonly again: (readonly Task[])[];
    readonly paper: Task[][];
  };
}

export async function sheetsShownBars(): Promise<Bar[]> {
  return withWindows(async (open) => {
    const bars: Bar[] = [];
    for (const pages of PAGES) bars.push(...barsOf(pages, await seen(open, pages)));
    return bars;
  });
}

async function seen(open: OpenWindow, pages: number): Promise<Seen> {
  const project = settled(projectOfPages(pages)).whole;
  const best: Seen = { first: Infinity, again: Infinity, least: Infinity, tasks: { first: [], again: [], paper: [] } };
  let elements = 0;
  // The first round tells how much is on the first page.
  for (let round = -1; round < roundsOf(ROUNDS); round++) {
    const page = await open(project);
    // As long as one looks at a project that was opened: what comes meanwhile has come.
    await page.waitForTimeout(LOOKED_AT_MS);
    const first = await shown(page, pages, elements);
    elements = await page.evaluate(() => document.querySelectorAll('.page:first-child svg *').length);
    if (round >= 0) {
      best.first = Math.min(best.first, first.ms);
      best.tasks.first.push(first.tasks);
      for (let time = 0; time < RETURNS; time++) {
        await goToMotif(page);
        const again = await shown(page, pages, elements);
        best.again = Math.min(best.again, again.workedMs);
        best.tasks.again.push(again.tasks);
      }
      best.least = Math.min(best.least, await leastFor(page));
      best.tasks.paper.push(await paperChanged(page, pages));
    }
    await page.context().close();
  }
  return best;
}

function barsOf(pages: number, { first, again, least, tasks }: Seen): Bar[] {
  const sheet = `a sheet of ${pages} pages`;
  const compared = (ours: number, against: number) => ({ ratio: ours / against, ours, against });
  return [
    {
      name: `from the key until the first page of ${sheet} is painted, the first time after a rest, against ${FIRST_MS} ms`,
      kind: 'at most',
      limit: 1,
      ...compared(first, FIRST_MS),
    },
    {
      name: `what the page works to show ${sheet} again, beyond a page that is given it as finished markup, against ${AGAIN_MS} ms`,
      kind: 'at most',
      limit: 1,
      ...compared(again - least, AGAIN_MS),
    },
    {
      name: `the whole of what it works to show ${sheet} again, against that page`,
      kind: 'figure',
      limit: null,
      ...compared(again, least),
    },
    ...longestBars(`while ${sheet} is shown for the first time`, MOST_MS, tasks.first),
    ...longestBars(`while ${sheet} is shown again`, MOST_MS, tasks.again),
    ...longestBars(`while the paper of ${sheet} is changed`, MOST_MS, tasks.paper),
  ];
}

interface Shown {
  /** From the key until the first page is painted, by the clock. */
  readonly ms: number;
  /** What the main thread worked until all pages had come and it was at rest. */
  readonly workedMs: number;
  readonly tasks: readonly Task[];
}

/** Goes to the bench; its first page is there once it has so many elements. */
async function shown(page: Page, pages: number, elements: number): Promise<Shown> {
  let ms = NaN;
  const tasks = await tasksOf(page, async () => {
    await page.evaluate(watchFirst, elements);
    await page.keyboard.press('3');
    ms = await page.evaluate(() => (window as unknown as Watching).firstPainted);
    await allThere(page, pages);
  });
  return { ms, workedMs: tasks.reduce((sum, { workedMs }) => sum + workedMs, 0), tasks };
}

interface Watching {
  /** The time from the key until the first page of the sheet is painted, ms. */
  firstPainted: Promise<number>;
}

/** In the page: watches from the next key on until the first page is painted. */
function watchFirst(elements: number): void {
  const isThere = (): boolean => {
    const drawn = document.querySelector('.page:first-child svg');
    return drawn !== null && drawn.getElementsByTagName('*').length >= elements;
  };
  const pressed = new Promise<number>((resolve) => {
    window.addEventListener('keydown', ({ timeStamp }) => resolve(timeStamp), { once: true, capture: true });
  });
  (window as unknown as Watching).firstPainted = pressed.then(async (since) => {
    do await new Promise(requestAnimationFrame);
    while (!isThere());
    // The next task after a frame begins once the page has handed it over.
    await new Promise<void>((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => resolve();
      port2.postMessage(null);
    });
    return performance.now() - since;
  });
}

/** Resolves once all pages have come, and nothing is left that the window does by itself. */
async function allThere(page: Page, pages: number): Promise<void> {
  await page.evaluate(async (count) => {
    const isThere = (): boolean =>
      document.querySelector('.pages')?.getAttribute('aria-busy') === 'false' &&
      document.querySelectorAll('.pages [role=document]').length >= count;
    while (!isThere()) await new Promise(requestAnimationFrame);
  }, pages);
  await atRest(page);
}

async function goToMotif(page: Page): Promise<void> {
  await page.keyboard.press('1');
  await page.getByRole('grid').waitFor();
  await atRest(page);
}

/** The other paper is chosen by the key, and waited for until all its pages have come. */
async function paperChanged(page: Page, pages: number): Promise<Task[]> {
  await page.getByLabel(words.sheetBench.paper, { exact: true }).focus();
  return tasksOf(page, async () => {
    const begun = page.evaluate(async () => {
      while (document.querySelector('.pages')?.getAttribute('aria-busy') !== 'true')
        await new Promise(requestAnimationFrame);
    });
    await page.keyboard.press('ArrowDown');
    await begun;
    // A page of the other paper takes a little less.
    await allThere(page, pages - Math.ceil(pages / 10));
  });
}
