/** What a pattern does about its long floats: wished for in its form, told in the running order, taken back. */
import { words } from '@shared/words/index.ts';
import { expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { findingsLine } from './piece-bench.ts';

const { longFloats, longFloatsHow, longCarries, longCarriesHow } = words.piece.form;

test('long floats are hooked up, latched up or left, by the form and the keyboard alone', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByRole('button', { name: 'Rows, copies, balls' }).click();
  const choice = page.getByLabel(longFloats, { exact: true });
  await expect(choice).toHaveValue('left');
  const watched = findingsLine(page).getByText('to watch');
  await expect(watched).toBeVisible();
  await choice.focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(choice).toHaveValue('hooked-up');
  // Nothing is left to mend.
  await expect(watched).toHaveCount(0);
  await choice.selectOption(longFloatsHow['latched-up']);
  await page.getByLabel(longCarries, { exact: true }).selectOption(longCarriesHow.cut);
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  const pages = page.getByRole('region', { name: 'Pages of the placement sheet' });
  await expect(pages).toContainText(/Latch up the floats of slate\s*behind\s*[LR]\d+/);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByRole('button', { name: 'Rows, copies, balls' }).click();
  for (let times = 0; times < 3; times++) await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(choice).toHaveValue('left');
  await expect(watched).toBeVisible();
});
