/** The sheet is laid out before its bench is gone to, while the hand rests. */
import { expect, test } from './app.ts';

test('the pages are there with the bench, and of a piece that is changed they are its own', async ({ page, start }) => {
  const begun: string[] = [];
  page.on('worker', (worker) => begun.push(worker.url()));
  // What seals messages comes with the page; the sheet's worker comes while the Motif bench rests.
  const ahead = page.waitForEvent('worker', (worker) => worker.url().startsWith('blob:'));
  await start();
  await ahead;
  const before = begun.length;
  await page.keyboard.press('3');
  await expect(page.locator('.page svg').first()).toBeVisible();
  await expect(page.getByText('Skerry sleeve').first()).toBeVisible();
  expect(begun.length).toBe(before);

  await page.keyboard.press('1');
  await page.getByRole('grid').focus();
  const anew = page.waitForEvent('worker', (worker) => worker.url().startsWith('blob:'));
  // A cell of the blank column.
  await page.keyboard.press('End');
  await page.keyboard.press(' ');
  await anew;
  await page.keyboard.press('3');
  await expect(page.locator('.page svg').first()).toBeVisible();
});
