/**
 * The preview of a sheet in the built window: the longest that the window is
 * busy with one thing, by Chromium's own trace, and so deaf to the hand. Of 30
 * pages from the key that opens the bench to the last page; of 120, on a
 * processor four times as slow, until they are scrolled through as well.
 */
import type { Page } from 'playwright';
import type { Project } from '@shared/project/index.ts';
import { median, type Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { projectOfPages } from './sheet.ts';
import { MOST_MS, tasksOf, type Task } from './tasks.ts';
import { settled } from '../written-projects.ts';

const ROUNDS = 5;
const PAGES = 30;
/** Of a garment of four pieces. */
const PIECES = 4;
const MANY = PIECES * PAGES;
const SLOW_DOWN = 4;
/** Views that a key scrolls by, from either end. */
const VIEWS = 12;

/** A piece so many times, each of as many pages. */
function garmentOf(project: Project, times: number): Project {
  const [piece] = project.pieces;
  if (!piece) throw new Error('A project has a piece');
  const pieces = Array.from({ length: times }, (_, at) => ({
    ...piece,
    id: `piece-${at}`,
    name: `part ${at + 1}`,
    patterns: piece.patterns.map((pattern) => ({ ...pattern, id: `${pattern.id}-of-${at}` })),
  }));
  return { ...project, pieces };
}

export async function previewingBars(): Promise<Bar[]> {
  return withWindows(async (open) => {
    const project = projectOfPages(PAGES);
    const rounds: Task[][] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const page = await open(settled(project).whole);
      rounds.push(await tasksOf(page, () => showSheet(page, PAGES)));
      await page.context().close();
    }
    const scrolled: Task[][] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const page = await open(garmentOf(settled(project).whole, PIECES));
      const devtools = await page.context().newCDPSession(page);
      // What the bench is made of is there, and all pieces are wanted.
      await page.keyboard.press('3');
      await page.getByLabel('Piece', { exact: true }).selectOption({ index: PIECES });
      await page.keyboard.press('1');
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
      scrolled.push(
        await tasksOf(page, async () => {
          await showSheet(page, MANY);
          await scrollThrough(page);
        }),
      );
      await page.context().close();
    }
    const longest = (of: keyof Task, among = rounds): number =>
      median(among.map((tasks) => Math.max(...tasks.map((task) => task[of]))));
    const compared = (ms: number) => ({ ratio: ms / MOST_MS, ours: ms, against: MOST_MS });
    return [
      {
        name: `the longest task of the window while the preview of ${PAGES} pages is opened and drawn, against ${MOST_MS} ms`,
        kind: 'at most',
        limit: 1,
        ...compared(longest('ms')),
      },
      {
        name: 'what the longest of them has worked, the time left out in which a busy machine let it wait',
        kind: 'figure',
        limit: null,
        ...compared(longest('workedMs')),
      },
      {
        name: `the same of ${MANY} pages, opened, drawn and scrolled through, ${SLOW_DOWN} × slower`,
        kind: 'at most',
        limit: 1,
        ...compared(longest('ms', scrolled)),
      },
      {
        name: 'what the longest of them has worked, the time left out in which a busy machine let it wait',
        kind: 'figure',
        limit: null,
        ...compared(longest('workedMs', scrolled)),
      },
    ];
  });
}

/** Waits in the page: what asks it from outside again and again is work of the page too. */
async function showSheet(page: Page, pages: number): Promise<void> {
  const drawn = page.evaluate(async (count) => {
    const all = '[data-drawing] [role=document]';
    while (document.querySelectorAll(all).length < count) await new Promise(requestAnimationFrame);
  }, pages);
  await page.keyboard.press('3');
  await drawn;
}

/** View by view from the beginning, then at once to the end, and view by view from there; each time until what is in view is drawn. */
async function scrollThrough(page: Page): Promise<void> {
  await page.evaluate(async (views) => {
    const list = document.querySelector('[data-drawing]') as HTMLElement;
    const isDrawn = (): boolean => {
      const { top, bottom } = list.getBoundingClientRect();
      return [...list.children].every((page) => {
        const box = page.getBoundingClientRect();
        return box.bottom <= top || box.top >= bottom || page.querySelector('svg') !== null;
      });
    };
    const to = async (y: number): Promise<void> => {
      list.scrollTop = y;
      do await new Promise(requestAnimationFrame);
      while (!isDrawn());
    };
    for (let view = 0; view < views; view++) await to(view * list.clientHeight);
    for (let view = 0; view < views; view++) await to(list.scrollHeight - (view + 1) * list.clientHeight);
  }, VIEWS);
}
