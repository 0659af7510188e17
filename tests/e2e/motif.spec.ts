/** The Motif bench: drawing a motif and being told what it is. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { announced, cursorLine, expect, statusLine, test } from './app.ts';
import { Chart, LIGHTHOUSE } from './chart.ts';

test('says what the motif is, and changes with every stroke', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  const meaning = page.getByRole('region', { name: 'What it is' });
  await expect(meaning).toContainText('24 stitches × 24 rows');
  await expect(meaning).toContainText('There is no figure');
  await expect(page.getByText('Nothing is drawn yet')).toBeVisible();

  await page.getByRole('textbox', { name: 'Stitches' }).fill('8');
  await page.getByRole('textbox', { name: 'Rows' }).fill('4');
  await chart.drag([2, 1], [2, 4]);
  await chart.drag([6, 1], [6, 4]);
  await expect(meaning).toContainText('The repeat is 4 stitches × 1 row.');
  await expect(meaning).toContainText('It is drawn 2 × 4 times.');
  // 28 stitches and 40 rows in 10 cm: 4 stitches are 14.3 mm, a row is 2.5 mm.
  await expect(page.getByText('One repeat: 4 stitches × 1 row, 1.4 × 0.3 cm')).toBeVisible();
  await expect(meaning).toContainText('The first column and the last 2 are blank all the way up');

  await chart.click(8, 1);
  await expect(meaning).toContainText('The repeat is 8 stitches × 4 rows, all that is drawn.');
  await expect(meaning).toContainText('The first column is blank all the way up');
});

test('draws with the mouse; one drag is one step of undo', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  await page.getByRole('textbox', { name: 'Stitches' }).fill('9');
  await page.getByRole('textbox', { name: 'Rows' }).fill('5');
  // Three samples far apart: the hand was quick.
  await chart.drag([1, 1], [5, 5], [9, 1]);
  const roof = ['....#....', '...#.#...', '..#...#..', '.#.....#.', '#.......#'];
  await expect.poll(() => chart.shown()).toEqual(roof);

  await page.getByRole('button', { name: 'Undo draw' }).click();
  await expect.poll(() => chart.shown()).toEqual(Array(5).fill('.........'));
  await page.getByRole('button', { name: 'Redo draw' }).click();
  await expect.poll(() => chart.shown()).toEqual(roof);

  await page.getByRole('button', { name: 'Erase' }).click();
  await chart.drag([1, 1], [3, 3]);
  await expect.poll(() => chart.shown()).toEqual(['....#....', '...#.#...', '......#..', '.......#.', '........#']);
  await expect(page.getByRole('button', { name: 'Undo erase' })).toBeEnabled();
});

test('goes on drawing where a drag left the chart and came back', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  await page.getByRole('textbox', { name: 'Stitches' }).fill('5');
  await page.getByRole('textbox', { name: 'Rows' }).fill('3');
  await chart.drag([1, 2], [-1, 2], [-1, 3], [5, 3]);
  await expect.poll(() => chart.shown()).toEqual(['#####', '#....', '.....']);
});

test('draws with the keyboard alone and says where it is', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  const row = chart.grid.getByRole('row');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('4');
  // What is above the chart comes before it.
  await page.getByRole('button', { name: 'Selection', exact: true }).focus();
  await page.keyboard.press('Tab');
  await expect(chart.grid).toBeFocused();

  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Space');
  await expect(announced(page)).toHaveText('Row 1, stitch 1, chalk');
  await expect(cursorLine(page)).toHaveText('Cursor: Row 1, stitch 1 · chalk, contrast');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowRight');
  await expect(announced(page)).toHaveText('Row 2, stitch 2, slate');
  await expect(chart.cell).toHaveAttribute('aria-colindex', '2');
  await expect(row).toHaveAttribute('aria-rowindex', '2');
  await expect(chart.cell).toHaveAccessibleName('Row 2, stitch 2, slate');
  for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Control+End');
  await expect(chart.cell).toHaveAccessibleName('Row 4, stitch 6, slate');
  await page.keyboard.press('Enter');
  await expect.poll(() => chart.shown()).toEqual(['.....#', '......', '.####.', '#.....']);

  // Not past an edge, and not round it.
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('PageUp');
  await expect(chart.cell).toHaveAccessibleName('Row 4, stitch 6, chalk');
  await page.keyboard.press('Home');
  await expect(chart.cell).toHaveAccessibleName('Row 4, stitch 1, slate');

  await page.keyboard.press('e');
  await expect(page.getByRole('button', { name: 'Erase' })).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Space');
  await expect.poll(() => chart.shown()).toEqual(['.....#', '......', '.####.', '......']);
  await page.keyboard.press('Control+z');
  await expect(announced(page)).toHaveText('Undone: erase.');
});

test('draws along while Shift is held, as one step of undo', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('3');
  await chart.grid.focus();
  await page.keyboard.down('Shift');
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowUp', 'ArrowRight']) await page.keyboard.press(key);
  await page.keyboard.up('Shift');
  await expect.poll(() => chart.shown()).toEqual(['......', '..##..', '###...']);
  await page.getByRole('button', { name: 'Undo draw' }).click();
  await expect.poll(() => chart.shown()).toEqual(['......', '......', '......']);
});

test('fills what hangs together, and nothing beyond', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await page.getByRole('button', { name: 'Fill' }).click();
  // The window of the tower, in rows 9 and 10.
  await chart.click(7, 9);
  const filled = LIGHTHOUSE.map((line, fromTop) => (fromTop === 8 || fromTop === 9 ? '....#####.....' : line));
  await expect.poll(() => chart.shown()).toEqual(filled);
  await page.getByRole('button', { name: 'Undo fill' }).click();
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
});

test('reads a picture in, one pixel a cell', async ({ page, home, start }) => {
  // Netpbm, plain PBM: 1 is black, rows from the top.
  writeFileSync(join(home, 'heart.pbm'), 'P1\n5 4\n0 1 0 1 0\n1 1 1 1 1\n0 1 1 1 0\n0 0 1 0 0\n');
  await start();
  await page.getByRole('button', { name: 'File' }).click();
  await page.getByRole('button', { name: 'Open…' }).click();
  await page.getByRole('button', { name: 'heart.pbm' }).dblclick();
  const chart = new Chart(page);
  await expect.poll(async () => chart.size()).toEqual({ columns: 5, rows: 4 });
  await chart.hover(3, 1);
  await expect(statusLine(page)).toContainText('Row 1, stitch 3');
  await expect(statusLine(page)).toContainText('contrast');
  await chart.hover(1, 1);
  await expect(statusLine(page)).toContainText('main');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('copies touch');
});

test('draws on 200 × 1000 cells', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  await page.getByRole('textbox', { name: 'Stitches' }).fill('200');
  await page.getByRole('textbox', { name: 'Rows' }).fill('1000');
  await chart.grid.focus();
  for (let i = 0; i < 16; i++) await page.keyboard.press('+');
  await page.keyboard.press('Control+Home');
  await chart.drag([1, 1], [4, 4]);
  await page.keyboard.press('Control+End');
  await page.keyboard.press('Space');
  await expect(chart.cell).toHaveAccessibleName('Row 1000, stitch 200, chalk');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText(
    'The repeat is 200 stitches × 1000 rows',
  );
});
