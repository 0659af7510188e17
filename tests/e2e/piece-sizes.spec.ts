/** Several sizes of one piece: added, given their numbers, compared, and gone to. */
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';

test('compares a sleeve in two sizes by keyboard, and undo shows the size that it changes', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.keyboard.press('s');
  const dialog = page.getByRole('dialog', { name: 'Sizes of Skerry sleeve' });
  await dialog.getByLabel('Name of size 1').fill('M');
  await dialog.getByRole('button', { name: 'Add a larger size' }).press('Enter');
  await dialog.getByLabel('Name of size 2').fill('M');
  await expect(dialog.getByRole('alert')).toContainText('Another size is called “M” already.');
  await dialog.getByLabel('Name of size 2').fill('L');
  await dialog.getByLabel('Stitches at the cast-on, size L').fill('104');
  await dialog.getByLabel('Stitches at the top, size L').fill('132');

  // Worked by hand: on row 25 M has 100 stitches and L 108, less two figures of 27 and a stitch at
  // each edge for the seam 44 and 52; a quarter of it and the seam's stitch is the margin, half the gap.
  const line = (name: string) => dialog.getByRole('row', { name: new RegExp(`^${name}`) }).getByRole('cell');
  await expect(line('Across the seam')).toHaveText(['22', '26']);
  await expect(line('Margins')).toHaveText(['12', '14']);
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);

  // A size that cannot be placed says why, and the other stands as it did.
  await dialog.getByLabel('Copies, group 1, size M').fill('6');
  await expect(dialog.getByText('Size M: The groups take 112 stitches and the piece has 100.')).toBeVisible();
  await expect(line('Across the seam')).toHaveText(['–', '26']);
  await dialog.getByRole('button', { name: 'Undo change copies of a size' }).click();
  await expect(line('Across the seam')).toHaveText(['22', '26']);
  await page.keyboard.press('Escape');

  // Undo went to the size of which it took something back.
  await expect(page.getByRole('heading', { name: 'Sleeve, size M, on the needles' })).toBeVisible();
  await page.keyboard.press(']');
  await expect(page.getByRole('heading', { name: 'Sleeve, size L, on the needles' })).toBeVisible();
  await expect(announced(page)).toHaveText('Size L is current.');
  await page.keyboard.press('[');
  await expect(page.getByRole('heading', { name: 'Sleeve, size M, on the needles' })).toBeVisible();
  // Looking is no step: what is taken back is the number before, and the size is shown that has it.
  await page.getByRole('button', { name: 'Undo change numbers of a size' }).click();
  await expect(page.getByRole('heading', { name: 'Sleeve, size L, on the needles' })).toBeVisible();

  // The sheet is of the size that is looked at, and may be of another.
  await page.keyboard.press('3');
  const size = page.getByLabel('Size', { exact: true });
  await expect(size.locator('option:checked')).toHaveText('L');
  const undo = await page.getByRole('button', { name: /^Undo/ }).textContent();
  await size.selectOption('M');
  await expect(page.getByRole('document').first()).toContainText('size M');
  await expect(page.getByRole('button', { name: /^Undo/ })).toHaveText(undo ?? '');
});
