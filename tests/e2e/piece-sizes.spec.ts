/** Several sizes of one piece: added, given their numbers, compared, and gone to. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { BODY, GARMENT, garmentText, planned, SLEEVE } from './garment.ts';

test('compares a sleeve in two sizes by keyboard, and undo shows the size that it changes', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.keyboard.press('s');
  const dialog = page.getByRole('dialog', { name: 'Sizes of Skerry sleeve' });
  await dialog.getByLabel('Name of size 1').fill('M');
  await dialog.getByRole('button', { name: 'Add a size' }).press('Enter');
  await dialog.getByRole('button', { name: 'Add size 2' }).press('Enter');
  await dialog.getByLabel('Name of size 2').fill('M');
  await expect(dialog.getByRole('alert')).toContainText('Another size is called “M” already.');
  await dialog.getByLabel('Name of size 2').fill('L');
  await dialog.getByLabel('Stitches at the cast-on, size L').fill('104');
  await dialog.getByLabel('Stitches at the top, size L').fill('132');

  // Worked by hand: on row 25 M has 100 stitches and L 108, less two figures of 27 and a stitch at
  // each edge for the seam 44 and 52; a quarter of it and the seam's stitch is the margin, half the gap.
  const line = (name: string) => dialog.getByRole('row', { name: new RegExp(`^${name}`) }).getByRole('cell');
  await expect(line('Across the seam')).toHaveText(['22', '26']);
  await expect(line('Margins, with the seam')).toHaveText(['12', '14']);
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

/** Goes to a field or button as a keyboard does. */
async function tabTo(page: Page, to: Locator): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    if (await to.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('Not reached by Tab');
}

test('makes three sizes of one by keyboard alone, with widths in centimetres', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.keyboard.press('s');
  const dialog = page.getByRole('dialog', { name: 'Sizes of Skerry sleeve' });
  const stitches = (size: string) => dialog.getByLabel(`Stitches at the cast-on, size ${size}`);
  const wide = (size: string) => dialog.getByLabel(`Stitches at the cast-on, in cm, size ${size}`);
  const add = dialog.getByRole('button', { name: 'Add a size' });
  const keys = async (...pressed: string[]): Promise<void> => {
    for (const key of pressed) await page.keyboard.press(key);
  };

  // Worked by hand at 28 stitches and 40 rows in 10 cm: 34 cm are 95.2 stitches, 44 cm 123.2, 36 cm 144 rows.
  await tabTo(page, dialog.getByLabel('Name of size 1'));
  await page.keyboard.type('S');
  await tabTo(page, wide('S'));
  await page.keyboard.type('34');
  await expect(stitches('S')).toHaveValue('95');
  await keys('Enter');
  await expect(dialog.getByLabel('Stitches at the top, in cm, size S')).toBeFocused();
  await page.keyboard.type('44');
  await keys('Enter');
  await page.keyboard.type('36');
  await expect(dialog.getByLabel('Rows, size S')).toHaveValue('144');

  // Beside one size there is no difference to go by.
  await tabTo(page, add);
  await keys('Enter');
  const where = dialog.getByLabel('It comes', { exact: true });
  await expect(where).toBeFocused();
  await expect(where.locator('option')).toHaveText(['before S, as the smallest', 'after S, as the largest']);
  await expect(where.locator('option:checked')).toHaveText('after S, as the largest');
  await keys('Tab');
  await page.keyboard.type('L');
  await tabTo(page, wide('L'));
  await expect(wide('L')).toHaveValue('34');
  await page.keyboard.type('38');
  await keys('Enter');
  await page.keyboard.type('49');
  await tabTo(page, dialog.getByRole('button', { name: 'Add size L' }));
  await keys('Enter');
  await expect(add).toBeFocused();
  await expect(stitches('L')).toHaveValue('106');

  // The last difference once more; then the middle: 36 cm are 100.8 stitches, 46.5 cm 130.2.
  await keys('Enter');
  await expect(wide('3')).toHaveValue('42');
  await expect(where).toBeFocused();
  await keys('ArrowUp');
  await expect(where.locator('option:checked')).toHaveText('between S and L');
  await expect(wide('3')).toHaveValue('36');
  await expect(stitches('3')).toHaveValue('101');
  await expect(dialog.getByLabel('Stitches at the top, size 3')).toHaveValue('130');
  await keys('Tab');
  await page.keyboard.type('M');
  await keys('Enter');
  await expect(add).toBeFocused();

  // It was one step, and what is proposed and not added is none.
  await keys('Enter', 'Escape');
  await expect(add).toBeFocused();
  await expect(dialog.getByRole('button', { name: 'Undo add size' })).toBeVisible();
  const heads = dialog.getByRole('textbox', { name: /^Name of size/ });
  const names = async (): Promise<string[]> =>
    heads.evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
  await expect.poll(names).toEqual(['S', 'M', 'L']);
});

test('keeps the widths of all sizes when the gauge changes, and the stitches follow', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.keyboard.press('s');
  const dialog = page.getByRole('dialog', { name: 'Sizes of Skerry sleeve' });
  const widths = async (): Promise<string[]> =>
    Promise.all(
      ['1', '2'].flatMap((size) => [
        dialog.getByLabel(`Stitches at the cast-on, in cm, size ${size}`).inputValue(),
        dialog.getByLabel(`Stitches at the cast-on, size ${size}`).inputValue(),
      ]),
    );
  // 34 cm are 95.2 stitches at 28 in 10 cm and 102 at 30; 38 cm 106.4 and 114.
  await dialog.getByLabel('Stitches at the cast-on, in cm, size 1').fill('34');
  await dialog.getByRole('button', { name: 'Add a size' }).press('Enter');
  await dialog.getByLabel('Stitches at the cast-on, in cm, size 2').fill('38');
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
  await dialog.getByRole('button', { name: 'Add size 2' }).press('Enter');
  await expect.poll(widths).toEqual(['34', '95', '38', '106']);
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);

  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await page.getByRole('textbox', { name: 'Stitches in 10 cm' }).fill('30');
  await page.getByRole('grid', { name: /on the needles$/ }).press('s');
  await expect.poll(widths).toEqual(['34', '102', '38', '114']);
  await dialog.getByRole('button', { name: 'Undo change gauge' }).press('Enter');
  await expect.poll(widths).toEqual(['34', '95', '38', '106']);
});

test('adds a size between two in every piece, as one step', async ({ page, start, home }) => {
  await start();
  const file = join(home, `${GARMENT}.walewright`);
  writeFileSync(file, garmentText({ sizes: ['S', 'L'] }));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(`${GARMENT}.walewright`, GARMENT);
  await page.keyboard.press('2');
  await page.getByRole('grid', { name: /on the needles$/ }).press('s');
  const dialog = page.getByRole('dialog', { name: `Sizes of ${GARMENT}` });
  const number = (line: string) => dialog.getByLabel(`${line}, size M`, { exact: true });
  await dialog.getByRole('button', { name: 'Add a size' }).click();
  await dialog.getByLabel('It comes', { exact: true }).selectOption('between S and L');
  await dialog.getByLabel('Name', { exact: true }).fill('M');
  await expect(number('Stitches')).toHaveValue(`${BODY.M.stitches}`);
  await expect(number('Rows')).toHaveValue(`${BODY.M.rows}`);
  // What is proposed for another piece is looked at before it is taken.
  const of = dialog.getByLabel('Piece', { exact: true });
  await of.selectOption('sleeve');
  await expect(number('Stitches at the cast-on')).toHaveValue(`${SLEEVE.M.castOn}`);
  await expect(number('Stitches at the top')).toHaveValue(`${SLEEVE.M.atTop}`);
  await expect(number('Rows')).toHaveValue(`${SLEEVE.M.rows}`);
  await dialog.getByRole('button', { name: 'Add size M' }).click();
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  await expect(page.getByRole('heading', { name: 'Sleeve, size M, on the needles' })).toBeVisible();

  await page.keyboard.press('Control+S');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  const { stitches, rows, first } = BODY.M;
  const back = planned(file, 'back', 'M');
  expect(back).toMatchObject({ size: 'M', piece: { name: 'back', stitches, rows } });
  expect(back.groups.map((group) => group.first)).toEqual(first);
  expect(planned(file, 'sleeve', 'M').piece).toMatchObject({ stitches: SLEEVE.M.castOn, rows: SLEEVE.M.rows });
  const undo = page.getByRole('button', { name: /^Undo/ });
  await expect(undo).toHaveAccessibleName('Undo add size');
  await page.keyboard.press('Control+Z');
  await expect(undo).toBeDisabled();
});
