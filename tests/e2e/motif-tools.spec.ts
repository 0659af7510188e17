/** The Motif bench's tools between two corners, filling, picking, and what follows the pen. */
import type { Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { Chart } from './chart.ts';

/** An empty motif of the given size. */
async function emptyChart(page: Page, stitches: number, rows: number): Promise<Chart> {
  await page.getByRole('textbox', { name: 'Stitches' }).fill(String(stitches));
  await page.getByRole('textbox', { name: 'Rows' }).fill(String(rows));
  return new Chart(page);
}

test('draws lines, rectangles and ellipses by mouse, each one step of undo', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page, 7, 5);
  await page.getByRole('button', { name: 'Draw a line' }).click();
  // The line follows the pointer; only where it is let go counts.
  await chart.drag([1, 1], [7, 1], [5, 5]);
  await expect.poll(() => chart.shown()).toEqual(['....#..', '...#...', '..#....', '.#.....', '#......']);
  await page.getByRole('button', { name: 'Undo draw line' }).click();

  await page.getByRole('button', { name: 'Draw a rectangle' }).click();
  await chart.drag([6, 4], [2, 2]);
  await expect.poll(() => chart.shown()).toEqual(['.......', '.#####.', '.#...#.', '.#####.', '.......']);
  await page.getByRole('button', { name: 'Undo draw rectangle' }).click();

  await page.getByRole('button', { name: 'Draw an ellipse' }).click();
  await page.getByRole('switch', { name: 'Filled' }).click();
  await chart.drag([1, 1], [7, 5]);
  await expect.poll(() => chart.shown()).toEqual(['.#####.', '#######', '#######', '#######', '.#####.']);
  await page.getByRole('button', { name: 'Undo draw ellipse' }).click();
  await expect.poll(() => chart.shown()).toEqual(Array(5).fill('.......'));
});

test('shows a shape while it is dragged, and Escape gives it up', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page, 5, 3);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Draw a rectangle' }).click();
  await chart.hover(1, 1);
  await page.mouse.down();
  await chart.hover(4, 3);
  await expect.poll(() => chart.shown()).toEqual(['####.', '#..#.', '####.']);
  await page.keyboard.press('Escape');
  await chart.hover(5, 3);
  await page.mouse.up();
  await expect.poll(() => chart.shown()).toEqual(['.....', '.....', '.....']);
  await expect(announced(page)).toHaveText('Cancelled.');
});

test('draws a shape with the keyboard alone and says so', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page, 5, 3);
  await chart.grid.focus();
  await page.keyboard.press('r');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Space');
  await expect(announced(page)).toContainText('Rectangle from row 1, stitch 1.');
  await page.keyboard.press('End');
  await page.keyboard.press('PageUp');
  await expect.poll(() => chart.shown()).toEqual(['#####', '#...#', '#####']);
  await page.keyboard.press('Escape');
  await expect.poll(() => chart.shown()).toEqual(['.....', '.....', '.....']);

  await page.keyboard.press('l');
  await page.keyboard.press('Space');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Enter');
  await expect(announced(page)).toHaveText('Line drawn.');
  await expect.poll(() => chart.shown()).toEqual(['...##', '..#..', '##...']);
});

test('fills everywhere, and picks a yarn from the chart', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page, 5, 1);
  await chart.click(3, 1);
  await page.getByRole('button', { name: 'Pick a yarn from the chart' }).click();
  await chart.click(1, 1);
  await expect(announced(page)).toHaveText('Drawing with slate.');
  await chart.click(3, 1);
  await expect(announced(page)).toHaveText('Drawing with chalk.');
  await page.getByRole('button', { name: 'Fill', exact: true }).click();
  await page.getByRole('switch', { name: 'Everywhere of its colour' }).click();
  await chart.click(1, 1);
  await expect.poll(() => chart.shown()).toEqual(['#####']);
});

test('paints symmetric cells and all copies along', async ({ page, start }) => {
  await start('empty');
  const chart = await emptyChart(page, 6, 4);
  await page.getByRole('combobox', { name: 'Symmetry' }).selectOption('left and right');
  await chart.drag([1, 1], [2, 2]);
  await expect.poll(() => chart.shown()).toEqual(['......', '......', '.#..#.', '#....#']);
  await page.getByRole('button', { name: 'Undo draw' }).click();

  await page.getByRole('combobox', { name: 'Symmetry' }).selectOption('none');
  await page.getByRole('switch', { name: 'All copies follow' }).click();
  await page.getByRole('button', { name: /^Size and step of the copies/ }).click();
  await page.getByRole('textbox', { name: 'Stitches in a copy' }).fill('3');
  await page.getByRole('textbox', { name: 'Rows in a copy' }).fill('2');
  await chart.click(5, 3);
  await expect.poll(() => chart.shown()).toEqual(['......', '.#..#.', '......', '.#..#.']);
  await page.getByRole('button', { name: 'Erase' }).click();
  await chart.click(2, 1);
  await expect.poll(() => chart.shown()).toEqual(Array(4).fill('......'));

  // By keys alone: both ways within each copy.
  await chart.grid.focus();
  for (const key of ['y', 'y', 'y']) await page.keyboard.press(key);
  await expect(announced(page)).toHaveText('Both ways alike');
  await page.keyboard.press('d');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Space');
  await expect.poll(() => chart.shown()).toEqual(Array(4).fill('#.##.#'));
});

test('is accessible with every control of the tools in sight, light and dark', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Draw a rectangle' }).click();
  await page.getByRole('combobox', { name: 'Symmetry' }).selectOption('both ways');
  await page.getByRole('switch', { name: 'All copies follow' }).click();
  await page.getByRole('button', { name: /^Size and step of the copies/ }).click();
  await page.getByRole('textbox', { name: 'Stitches in a copy' }).fill('7');
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
});
