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
  await expect(dialog.getByRole('button', { name: 'Place it on the chart' })).toBeDisabled();
  await page.keyboard.press('Backspace');
  await expect(dialog).toContainText('3 stitches × 5 rows');
  await expect(dialog).toContainText('It reads on the knit side');
  await expectAccessible(page);

  // Wider than the motif: it says so, and makes the motif larger in one step.
  await page.keyboard.type('I');
  await expect(dialog).toContainText('It is larger than the motif, 5 stitches × 7 rows');
  await appearAs(page, 'dark');
  await expectAccessible(page);
  await page.keyboard.press('Backspace');
  for (let i = 0; i < 7; i++) await page.keyboard.press('Tab');
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
