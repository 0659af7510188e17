/** What is found ahead of a long piece: shown card by card, so that it never holds up the hand, and no more of it than is read. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { longBody } from '../long-body.ts';
import { expect, expectAccessible, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { openFindings } from './piece-bench.ts';
import { textOf } from './projects.ts';

const BANDS = 12;

/** What each task of the page has put into the panel since it was opened: cards, and pictures of remedies within them. */
interface Put {
  readonly cards: number;
  readonly pictures: number;
}

/** Writes down what comes into the part of the panel that tells what is found, task by task. */
async function countCards(page: Page): Promise<() => Promise<Put[]>> {
  await page.addInitScript(() => {
    const puts: Put[] = [];
    Object.assign(window, { puts });
    const part = (): Element | undefined =>
      [...document.querySelectorAll('section')].find(({ firstElementChild: head }) =>
        head?.textContent.startsWith('What to watch'),
      );
    // Called once for all that one task has changed.
    new MutationObserver((changes) => {
      const put = { cards: 0, pictures: 0 };
      for (const { addedNodes } of changes) {
        for (const node of addedNodes) {
          // What comes with the part itself was there when it was opened.
          if (!(node instanceof Element) || !part()?.contains(node) || node.contains(part() ?? null)) continue;
          if (node.parentElement === part()) put.cards++;
          put.pictures += node.matches('figure') ? 1 : node.querySelectorAll('figure').length;
        }
      }
      if (put.cards + put.pictures > 0) puts.push(put);
    }).observe(document, { childList: true, subtree: true });
  });
  return () => page.evaluate(() => (window as unknown as { puts: Put[] }).puts);
}

test('comes a card a task, and remedies beyond three are folded away', async ({ page, home, start }) => {
  const puts = await countCards(page);
  writeFileSync(join(home, 'long.walewright'), textOf(longBody(BANDS)));
  await start();
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject('long.walewright', 'Long body');
  await page.keyboard.press('2');
  const worst = (await openFindings(page)).getByRole('group', { name: /^1 of / });
  const pictures = worst.getByRole('figure');
  const fold = worst.getByText(/^\d+ more remed/);
  await expect(fold).toBeVisible({ timeout: 15_000 });
  // Before and after of each.
  await expect(pictures).toHaveCount(6);
  await expectAccessible(page);

  // By keyboard, from the fold itself.
  await fold.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => pictures.count()).toBeGreaterThan(6);
  const shown = await puts();
  const most = (of: keyof Put): number => Math.max(...shown.map((put) => put[of]));
  expect([most('cards'), most('pictures')]).toEqual([1, 2]);

  // No two are called the same.
  const names = await worst.locator('.remedy').getByRole('button').allTextContents();
  expect(new Set(names).size).toBe(names.length);

  const balls = worst.getByRole('button', { name: `Give each group its own ball in ${BANDS} pattern bands` });
  await balls.click();
  await expect(page.getByRole('button', { name: 'Undo change balls' })).toBeEnabled();
  await expect(balls).toHaveCount(0);
});
