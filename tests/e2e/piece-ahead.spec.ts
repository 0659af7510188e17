/** What is found ahead of a long piece: shown card by card, so that it never holds up the hand, and no more of it than is read. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { longBody } from '../long-body.ts';
import { expect, expectAccessible, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { textOf } from './projects.ts';

const BANDS = 12;

/** Each for all bands: hooking and latching up, anchors, balls, lining. */
const REMEDIES = 5;

/** What each task of the page has put into the panel since it was opened: cards, and buttons within them. */
interface Put {
  readonly cards: number;
  readonly buttons: number;
}

/** Writes down what comes into the part of the panel that tells what is found, task by task. */
async function countCards(page: Page): Promise<() => Promise<Put[]>> {
  await page.addInitScript(() => {
    const puts: Put[] = [];
    // The mark beside a number, which says how it comes about, comes with its sentence.
    const deeds = 'button:not([popovertarget])';
    Object.assign(window, { puts });
    const part = (): Element | undefined =>
      [...document.querySelectorAll('section')].find(({ firstElementChild: head }) =>
        head?.textContent.startsWith('Before you knit'),
      );
    // Called once for all that one task has changed.
    new MutationObserver((changes) => {
      const put = { cards: 0, buttons: 0 };
      for (const { addedNodes } of changes) {
        for (const node of addedNodes) {
          // What comes with the part itself was there when it was opened.
          if (!(node instanceof Element) || !part()?.contains(node) || node.contains(part() ?? null)) continue;
          if (node.parentElement === part()) put.cards++;
          put.buttons += node.matches(deeds) ? 1 : node.querySelectorAll(deeds).length;
        }
      }
      if (put.cards + put.buttons > 0) puts.push(put);
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
  const before = page.getByRole('region', { name: 'Before you knit' });
  const remedies = before.locator('.remedy').getByRole('button');
  const fold = before.getByText(`${REMEDIES - 3} more remedies`);
  await expect(before.getByRole('heading', { name: 'On the way' })).toBeVisible();
  await expect(fold).toBeVisible();
  await expect(remedies).toHaveCount(3);
  await expectAccessible(page);

  // By keyboard, from the last remedy that is shown.
  await remedies.last().focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(remedies).toHaveCount(REMEDIES);
  // No two are called the same.
  expect(new Set(await remedies.allTextContents()).size).toBe(REMEDIES);
  const shown = await puts();
  const most = (of: keyof Put): number => Math.max(...shown.map((put) => put[of]));
  expect([most('cards'), most('buttons')]).toEqual([1, 1]);
  expect(shown.reduce((sum, { buttons }) => sum + buttons, 0)).toBe(REMEDIES);

  // One of those that were folded away is taken.
  await before.getByRole('button', { name: /^Give each group its own ball/ }).click();
  await expect(page.getByRole('button', { name: 'Undo change balls' })).toBeEnabled();
  await expect(before.getByRole('button', { name: /^Give each group its own ball/ })).toHaveCount(0);
});
