/** Drawing over the edge of the chart and in the copies around it, straight and stepped. */
import type { Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { Chart } from './chart.ts';

/** An empty motif of six stitches and four rows. */
async function emptyChart(page: Page): Promise<Chart> {
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('4');
  return new Chart(page);
}
const EMPTY = Array<string>(4).fill('......');

test('a stroke goes over the edge and comes in on the other side while all copies follow', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page);
  await chart.drag([5, 2], [8, 2]);
  await expect.poll(() => chart.shown()).toEqual(['......', '......', '....##', '......']);
  await page.getByRole('button', { name: 'Undo draw' }).click();

  await page.getByRole('switch', { name: 'All copies follow' }).click();
  await chart.drag([5, 2], [8, 2]);
  await expect.poll(() => chart.shown()).toEqual(['......', '......', '##..##', '......']);
  await page.getByRole('button', { name: 'Undo draw' }).click();
  await expect.poll(() => chart.shown()).toEqual(EMPTY);

  // In a half drop the copies at the right stand half a copy higher.
  await page.getByRole('button', { name: /^Size and step of the copies/ }).click();
  await page.getByRole('combobox', { name: 'Copies lie' }).selectOption('in columns, as a half drop');
  await expect(page.getByRole('textbox', { name: 'Step each column of copies up by' })).toHaveValue('2');
  await chart.drag([5, 1], [8, 1]);
  await expect.poll(() => chart.shown()).toEqual(['......', '##....', '......', '....##']);
  await expect.poll(() => chart.copies({ stitch: 7, row: 1, columns: 2, rows: 4 })).toEqual(['..', '..', '..', '##']);
  await page.getByRole('button', { name: 'Undo draw' }).click();
  await expect.poll(() => chart.shown()).toEqual(EMPTY);

  // As bricks with a step of one: the course above stands one stitch to the right.
  await page.getByRole('button', { name: /^Size and step of the copies/ }).click();
  await page.getByRole('combobox', { name: 'Copies lie' }).selectOption('in rows, as bricks');
  await page.getByRole('textbox', { name: 'Step each row of copies right by' }).fill('1');
  await page.getByRole('button', { name: 'Draw a line' }).click();
  await chart.drag([3, 4], [3, 5]);
  await expect.poll(() => chart.shown()).toEqual(['..#...', '......', '......', '.#....']);
  await expect.poll(() => chart.copies({ stitch: 1, row: 5, columns: 6, rows: 1 })).toEqual(['..#...']);
  await page.getByRole('button', { name: 'Undo draw line' }).click();
  await expect.poll(() => chart.shown()).toEqual(EMPTY);
});

test('a stroke by keys goes over the edge too, as one step of undo', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page);
  await page.getByRole('switch', { name: 'All copies follow' }).click();
  await chart.grid.focus();
  await page.keyboard.press('Control+End');
  await page.keyboard.down('Shift');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.up('Shift');
  await expect.poll(() => chart.shown()).toEqual(['##...#', '......', '......', '.#....']);
  await expect(announced(page)).toContainText('Row 1, stitch 2');
  await page.keyboard.press('Control+z');
  await expect.poll(() => chart.shown()).toEqual(EMPTY);
});

test('a stroke begins in a copy beside the chart, which says what it repeats', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page);
  await chart.drag([6, 4], [6, 4]);
  await chart.hover(-1, 1);
  await expect(page.getByText('Row 1, stitch 5 · slate, main (in a copy)')).toBeVisible();
  await chart.drag([-1, 1], [1, 3]);
  await expect.poll(() => chart.shown()).toEqual(['.....#', '#.....', '.....#', '....#.']);
  await page.getByRole('button', { name: 'Undo draw' }).click();
  await expect.poll(() => chart.shown()).toEqual(['.....#', '......', '......', '......']);

  // Where no copies show, there is nothing to draw in beside the chart.
  await page.getByRole('switch', { name: 'Show neighbours' }).click();
  await chart.drag([-1, 1], [1, 3]);
  await expect.poll(() => chart.shown()).toEqual(['.....#', '#.....', '......', '......']);

  // A yarn is picked there too.
  await page.getByRole('switch', { name: 'Show neighbours' }).click();
  await page.getByRole('button', { name: 'Pick a yarn from the chart' }).click();
  await chart.click(7, 1);
  await expect(announced(page)).toHaveText('Drawing with slate.');
});

test('the copies beside the chart follow a shape that is pulled and cells that are lifted', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page);
  const left = { stitch: -4, row: 1, columns: 5, rows: 4 };
  await page.getByRole('button', { name: 'Draw a rectangle' }).click();
  await chart.hover(4, 2);
  await page.mouse.down();
  await chart.hover(6, 3);
  await expect.poll(() => chart.copies(left)).toEqual(['.....', '..###', '..###', '.....']);
  await page.mouse.up();

  await page.getByRole('button', { name: 'Select cells' }).click();
  await chart.drag([4, 2], [6, 3]);
  await chart.hover(5, 2);
  await page.mouse.down();
  await chart.hover(5, 3);
  await expect.poll(() => chart.copies(left)).toEqual(['..###', '..###', '.....', '.....']);
  await page.mouse.up();
  await page.keyboard.press('Escape');
  await expect.poll(() => chart.copies(left)).toEqual(['.....', '..###', '..###', '.....']);
});

test('the fields of copies that lie stepped are accessible, light and dark', async ({ page, start }) => {
  await start('empty');
  await emptyChart(page);
  await page.getByRole('switch', { name: 'All copies follow' }).focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: /^Size and step of the copies/ }).click();
  await page.getByRole('combobox', { name: 'Copies lie' }).selectOption('in rows, as bricks');
  await expect(page.getByRole('textbox', { name: 'Step each row of copies right by' })).toHaveValue('3');
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
});
