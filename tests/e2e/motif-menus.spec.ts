/** The menus above the chart: what is done to all of it or to what is selected, by pointer and by keyboard. */
import type { Locator, Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { Chart } from './chart.ts';

/** Four stitches and three rows, with an L in the lower left corner. */
async function cornerChart(page: Page): Promise<Chart> {
  await page.getByRole('textbox', { name: 'Stitches' }).fill('4');
  await page.getByRole('textbox', { name: 'Rows' }).fill('3');
  const chart = new Chart(page);
  await chart.drag([1, 3], [1, 1]);
  await chart.click(2, 1);
  await expect.poll(() => chart.shown()).toEqual(['#...', '#...', '##..']);
  return chart;
}
const menu = (page: Page, name: string): Locator => page.getByRole('group', { name, exact: true });
async function open(page: Page, name: string): Promise<Locator> {
  await page.getByRole('button', { name, exact: true }).click();
  await expect(menu(page, name).getByRole('button').first()).toBeVisible();
  return menu(page, name);
}

test('flips, turns and shifts from a menu, which stays open for shifts', async ({ page, start }) => {
  await start('empty');
  const chart = await cornerChart(page);
  let turns = await open(page, 'Flip and shift');
  await turns.getByRole('button', { name: 'Flip left to right' }).click();
  await expect.poll(() => chart.shown()).toEqual(['...#', '...#', '..##']);
  await expect(turns).toBeHidden();
  // The keyboard stays with the chart, as with the tools.
  await expect(chart.grid).toBeFocused();

  turns = await open(page, 'Flip and shift');
  const left = turns.getByRole('button', { name: 'Shift left by one stitch' });
  await left.click();
  await left.click();
  await expect.poll(() => chart.shown()).toEqual(['.#..', '.#..', '##..']);
  await expect(turns).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(turns).toBeHidden();

  turns = await open(page, 'Flip and shift');
  await turns.getByRole('button', { name: 'Turn 90° clockwise' }).click();
  await expect.poll(() => chart.shown()).toEqual(['#..', '###', '...', '...']);
});

test('puts columns and rows in and takes them away from a menu', async ({ page, start }) => {
  await start('empty');
  const chart = await cornerChart(page);
  const lines = await open(page, 'Columns and rows');
  await lines.getByRole('button', { name: /^Insert a column/ }).click();
  await expect.poll(() => chart.shown()).toEqual(['#....', '#....', '#.#..']);
  await lines.getByRole('button', { name: /^Delete the row/ }).click();
  await expect.poll(() => chart.shown()).toEqual(['#....', '#....']);
  await lines.getByRole('button', { name: /^Delete the column/ }).click();
  await lines.getByRole('button', { name: /^Insert a row/ }).click();
  await expect.poll(() => chart.shown()).toEqual(['#...', '#...', '....']);
});

test('recolours from a menu', async ({ page, start }) => {
  await start('empty');
  const chart = await cornerChart(page);
  await (await open(page, 'Recolour')).getByRole('button', { name: 'Invert figure and ground' }).click();
  await expect.poll(() => chart.shown()).toEqual(['.###', '.###', '..##']);
  // The cursor is on the ground, and the drawing yarn changes places with it.
  const exchange = 'Exchange the drawing yarn with the yarn at the cursor';
  await (await open(page, 'Recolour')).getByRole('button', { name: exchange }).click();
  await expect.poll(() => chart.shown()).toEqual(['#...', '#...', '##..']);
  await (await open(page, 'Recolour')).getByRole('button', { name: 'Outline the figure by one cell' }).click();
  await expect.poll(() => chart.shown()).toEqual(['##..', '###.', '###.']);
});

test('selects by yarn, which says at the foot how many cells, and says why nothing can be copied before', async ({
  page,
  start,
}) => {
  await start('empty');
  const chart = await cornerChart(page);
  let selection = await open(page, 'Selection');
  const copy = selection.getByRole('button', { name: /^Copy/ });
  await expect(copy).toBeDisabled();
  await expect(copy).toHaveAccessibleDescription('Nothing is selected.');
  await expect(selection.getByText('Nothing is selected.')).toBeVisible();
  await expect(selection.getByText('Nothing has been copied yet.')).toBeVisible();
  // One that cannot be used does nothing, and leaves the menu.
  await copy.click({ force: true });
  await expect(selection).toBeVisible();

  await selection.getByRole('button', { name: 'Select all cells of the yarn at the cursor' }).click();
  await expect(announced(page)).toHaveText(
    'Selected: 4 cells of chalk, within 2 stitches × 3 rows. M moves them, Escape lets them go.',
  );
  // Seen, not only heard.
  await expect(announced(page).locator('.only-heard')).toHaveCount(0);
  await expect(announced(page)).toBeInViewport({ ratio: 1 });

  selection = await open(page, 'Selection');
  await selection.getByRole('button', { name: /^Cut/ }).click();
  await expect.poll(() => chart.shown()).toEqual(['....', '....', '....']);
  selection = await open(page, 'Selection');
  await selection.getByRole('button', { name: /^Paste/ }).click();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect.poll(() => chart.shown()).toEqual(['..#.', '..#.', '..##']);
});

test('menus are walked by keys alone, and give the keyboard back', async ({ page, start }) => {
  await start('empty');
  const chart = await cornerChart(page);
  const button = page.getByRole('button', { name: 'Flip and shift' });
  await button.focus();
  await page.keyboard.press('Enter');
  const items = menu(page, 'Flip and shift').getByRole('button');
  await expect(items).toHaveCount(7);
  await page.keyboard.press('ArrowDown');
  await expect(items.first()).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await expect(items.last()).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await expect(items.nth(1)).toBeFocused();
  await page.keyboard.press('Enter');
  await expect.poll(() => chart.shown()).toEqual(['##..', '#...', '#...']);
  await expect(button).toBeFocused();
});

test('menus are accessible, light and dark', async ({ page, start }) => {
  await start();
  await open(page, 'Selection');
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
});
