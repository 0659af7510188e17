/** Cells that are laid over the edge of the chart: told before and after, and brought back by undo. */
import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { Chart } from './chart.ts';

/** What stands on the chart about cells outside it; it is heard as well. */
const note = (page: Page) => page.getByRole('main').getByRole('status').filter({ hasText: /chart/ });

/** A block of three stitches and two rows in the lower left corner of 6 × 3. */
async function blockChart(page: Page): Promise<Chart> {
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('3');
  const chart = new Chart(page);
  await chart.drag([1, 1], [3, 1]);
  await chart.drag([1, 2], [3, 2]);
  return chart;
}
const BLOCK = ['......', '###...', '###...'];

test('says what a lifted selection loses over the edge, and undo brings it back', async ({ page, start }) => {
  await start('empty');
  const chart = await blockChart(page);
  await page.getByRole('button', { name: 'Select cells' }).click();
  await chart.drag([1, 1], [3, 2]);
  await chart.drag([2, 1], [3, 1]);
  await expect(note(page)).toHaveCount(0);
  await chart.grid.focus();
  for (let times = 0; times < 4; times++) await page.keyboard.press('ArrowRight');
  await expect(note(page)).toHaveText('Outside the chart: 2 stitches at the right. Placed here, they are left off.');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await expect(note(page)).toContainText('2 stitches at the right and 1 row at the top.');
  await page.keyboard.press('Enter');
  await expect(note(page)).toHaveText(
    'Left off outside the chart: 2 stitches at the right and 1 row at the top. Undo brings them back.',
  );
  await expect(note(page)).toBeVisible();
  await expect.poll(() => chart.shown()).toEqual(['.....#', '......', '......']);
  await page.keyboard.press('Control+z');
  await expect(note(page)).toHaveCount(0);
  await expect.poll(() => chart.shown()).toEqual(BLOCK);
});

test('says it too when the pointer lays a copy or something else is taken up', async ({ page, start }) => {
  await start('empty');
  const chart = await blockChart(page);
  await page.getByRole('button', { name: 'Select cells' }).click();
  await chart.drag([1, 1], [3, 2]);
  await page.keyboard.press('Control+c');
  await page.keyboard.press('Control+v');
  await chart.drag([2, 1], [1, 2]);
  await expect(note(page)).toContainText('1 stitch at the left.');
  // Another tool lays it down.
  await page.keyboard.press('d');
  await expect(note(page)).toHaveText('Left off outside the chart: 1 stitch at the left. Undo brings them back.');
  await page.keyboard.press('Control+z');
  await expect.poll(() => chart.shown()).toEqual(BLOCK);

  // All of it outside.
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Control+v');
  for (let times = 0; times < 3; times++) await page.keyboard.press('ArrowLeft');
  await expect(note(page)).toContainText('All of it is outside the chart.');
  await page.keyboard.press('Enter');
  await expect(note(page)).toHaveText('All of it was outside the chart: nothing was placed.');
  await expect.poll(() => chart.shown()).toEqual(BLOCK);
});

test('says what a smaller chart leaves off', async ({ page, start }) => {
  await start('empty');
  const chart = await blockChart(page);
  const stitches = page.getByRole('textbox', { name: 'Stitches' });
  await stitches.fill('4');
  await expect(page.getByRole('grid')).toHaveAttribute('aria-colcount', '4');
  await expect(note(page)).toHaveCount(0);
  await stitches.fill('2');
  await expect(note(page)).toHaveText('Left off outside the chart: 1 stitch at the right. Undo brings them back.');
  // Typed on in the same field, nothing is left off any more.
  await stitches.fill('6');
  await expect(note(page)).toHaveCount(0);
  await expect.poll(() => chart.shown()).toEqual(BLOCK);
});

test('says what a stamp and letters lose over the edge', async ({ page, start }) => {
  await start('empty');
  const chart = await blockChart(page);
  await page.getByRole('button', { name: 'Add an empty motif' }).click();
  await expect.poll(() => chart.shown()).toEqual(['......', '......', '......']);
  await page.getByRole('button', { name: 'Stamp another motif' }).click();
  // Its middle goes where the pointer is: the block sticks out by one stitch.
  await chart.click(2, 3);
  await page.keyboard.press('d');
  await expect(note(page)).toHaveText('Left off outside the chart: 1 stitch at the left. Undo brings them back.');
  await page.keyboard.press('Control+z');
  await expect(note(page)).toHaveCount(0);

  await page.keyboard.press('a');
  const dialog = page.getByRole('dialog', { name: 'Lettering' });
  await dialog.getByRole('textbox', { name: 'Text' }).fill('I');
  await dialog.getByRole('button', { name: 'Place it on the chart' }).click();
  // Five rows on a chart of three.
  await expect(note(page)).toContainText('Outside the chart: 2 rows at the top.');
  await page.keyboard.press('Enter');
  await expect(note(page)).toHaveText('Left off outside the chart: 2 rows at the top. Undo brings them back.');
  await page.keyboard.press('Control+z');
  await expect.poll(() => chart.shown()).toEqual(['......', '......', '......']);
});
