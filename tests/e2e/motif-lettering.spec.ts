/** Letters set in cells on the Motif bench. */
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { Chart } from './chart.ts';

test('sets letters with the keyboard alone, lays them and takes them back', async ({ page, start }) => {
  await start('empty');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('5');
  await page.getByRole('textbox', { name: 'Rows' }).fill('7');
  const chart = new Chart(page);
  const blank = await chart.shown();
  await chart.grid.focus();

  await page.keyboard.press('a');
  const dialog = page.getByRole('dialog', { name: 'Lettering' });
  await expect(dialog.getByRole('textbox', { name: 'Text' })).toBeFocused();
  await expect(dialog.getByRole('button', { name: 'Place it on the chart' })).toBeDisabled();
  await page.keyboard.type('L漢');
  await expect(dialog.getByRole('alert')).toContainText('Silkscreen has no 漢.');
  // What is missing is named; the rest shows and can be placed. No other typeface has it, so none is offered.
  await expect(dialog.getByRole('alert')).toContainText('The rest is shown.');
  await expect(dialog.getByRole('img', { name: 'L in cells, 3 stitches × 5 rows' })).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Place it on the chart' })).toBeEnabled();
  await expect(dialog.getByRole('button', { name: /^Use / })).toHaveCount(0);
  await page.keyboard.press('Backspace');
  await expect(dialog).toContainText('3 stitches × 5 rows');
  await expect(dialog).toContainText('It reads on the knit side');
  await expectAccessible(page);

  // Wider than the motif: it says so, and makes the motif larger in one step.
  await page.keyboard.type('I');
  await expect(dialog).toContainText('It is larger than the motif, 5 stitches × 7 rows. Left off: ');
  await appearAs(page, 'dark');
  await expectAccessible(page);
  await page.keyboard.press('Backspace');
  for (let i = 0; i < 8; i++) await page.keyboard.press('Tab');
  await expect(dialog.getByRole('button', { name: 'Place it on the chart' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(dialog).toBeHidden();
  await expect(announced(page)).toContainText('Arrow keys move it');
  await expect(chart.grid).toBeFocused();

  await page.keyboard.press('Shift+H');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  const laid = ['.....', '...#.', '...#.', '...#.', '...#.', '.###.', '.....'];
  await expect.poll(() => chart.shown()).toEqual(laid);
  await page.keyboard.press('Control+z');
  await expect(announced(page)).toHaveText('Undone: lettering.');
  await expect.poll(() => chart.shown()).toEqual(blank);
});

test('offers the typeface that has what is missing, shows yarns by their swatch, and places letters beside what is drawn', async ({
  page,
  start,
}) => {
  await start('empty');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('7');
  await page.getByRole('textbox', { name: 'Rows' }).fill('6');
  const chart = new Chart(page);
  await chart.drag([1, 1], [1, 2]);
  await chart.grid.focus();
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('a');
  const dialog = page.getByRole('dialog', { name: 'Lettering' });
  await dialog.getByText('Pixelify Sans', { exact: true }).click();
  await dialog.getByRole('textbox', { name: 'Text' }).fill('¦');
  await expect(dialog.getByRole('alert')).toHaveText('Pixelify Sans has no ¦.');
  await expect(dialog.getByRole('button', { name: 'Place it on the chart' })).toBeDisabled();
  await expectAccessible(page);
  await dialog.getByRole('button', { name: 'Use Silkscreen, which has it' }).click();
  await expect(dialog.getByRole('radio', { name: 'Silkscreen' })).toBeChecked();
  await expect(dialog.getByRole('alert')).toHaveCount(0);

  await dialog.getByRole('textbox', { name: 'Text' }).fill('L');
  await expect(dialog).toContainText('It goes to row 1, stitch 3: from the cursor, the nearest place where it fits');
  const place = dialog.getByRole('combobox', { name: 'Place' });
  await place.selectOption('in the middle');
  await expect(dialog).toContainText('It goes to the middle of the chart, row 1, stitch 3.');
  await place.selectOption('near the cursor');
  // Each yarn has its swatch beside its name.
  const yarn = dialog.getByRole('radio', { name: 'chalk' });
  await expect(yarn).toBeChecked();
  await expect(dialog.locator('label', { hasText: 'chalk' }).locator('.swatch')).toHaveCSS(
    'background-color',
    'rgb(251, 247, 234)',
  );
  await dialog.getByRole('button', { name: 'Place it on the chart' }).click();
  await page.keyboard.press('Enter');
  await expect.poll(() => chart.shown()).toEqual(['.......', '..#....', '..#....', '..#....', '#.#....', '#.###..']);
});
