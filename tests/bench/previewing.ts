/**
 * The preview of a sheet of 30 pages in the built window, from the key that
 * opens the bench to its last page: the longest that the window is busy with one
 * thing, by Chromium's own trace, and so deaf to the hand.
 */
import type { Page } from 'playwright';
import { median, type Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { PAGES, projectOfPages } from './sheet.ts';
import { MOST_MS, tasksOf, type Task } from './tasks.ts';
import { settled } from '../written-projects.ts';

const ROUNDS = 5;

export async function previewingBars(): Promise<Bar[]> {
  return withWindows(async (open) => {
    const project = projectOfPages(PAGES);
    const rounds: Task[][] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const page = await open(settled(project).whole);
      rounds.push(await tasksOf(page, () => showSheet(page)));
      await page.context().close();
    }
    const longest = (of: keyof Task): number =>
      median(rounds.map((tasks) => Math.max(...tasks.map((task) => task[of]))));
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
    ];
  });
}

/** Waits in the page: what asks it from outside again and again is work of the page too. */
async function showSheet(page: Page): Promise<void> {
  const drawn = page.evaluate(async (pages) => {
    while (document.querySelectorAll('[data-drawing] svg[role=document]').length < pages) {
      await new Promise(requestAnimationFrame);
    }
  }, PAGES);
  await page.keyboard.press('3');
  await drawn;
}
