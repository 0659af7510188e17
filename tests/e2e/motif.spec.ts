/** The Motif bench: drawing a motif and being told what it is. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { announced, expect, expectAccessible, statusLine, test } from './app.ts';
import { Chart } from './chart.ts';

/** The lighthouse of the sample project, topmost row first. */
const LIGHTHOUSE = [
  '......#.......',
  '.....###......',
  '....#####.....',
  '.##..###..##..',
  '#..#.#.#.#..#.',
  '....##.##.....',
  '.....###......',
  '.....###......',
  '....##.##.....',
  '....##.##.....',
  '....#####.....',
  '....#...#.....',
  '...#######....',
  '...##...##....',
  '...#######....',
  '..###...###...',
  '..#########...',
  '#############.',
];

test('shows the sample with row 1 at the bottom, in the proportion of its gauge', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  expect(await chart.shown()).toEqual(LIGHTHOUSE);
  const { width, height } = await chart.cellSize();
  // 40 rows and 28 stitches in 10 cm: a stitch is 40/28 times as wide as tall.
  expect(width / height).toBeCloseTo(40 / 28, 3);

  await page.getByLabel('Cell shape').selectOption('square');
  const square = await chart.cellSize();
  expect(square.width / square.height).toBeCloseTo(1, 3);
  expect(await chart.shown()).toEqual(LIGHTHOUSE);
});

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
  expect(await chart.shown()).toEqual(roof);

  await page.getByRole('button', { name: 'Undo draw' }).click();
  expect(await chart.shown()).toEqual(Array(5).fill('.........'));
  await page.getByRole('button', { name: 'Redo draw' }).click();
  expect(await chart.shown()).toEqual(roof);

  await page.getByRole('button', { name: 'Erase' }).click();
  await chart.drag([1, 1], [3, 3]);
  expect(await chart.shown()).toEqual(['....#....', '...#.#...', '......#..', '.......#.', '........#']);
  await expect(page.getByRole('button', { name: 'Undo erase' })).toBeEnabled();
});

test('goes on drawing where a drag left the chart and came back', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  await page.getByRole('textbox', { name: 'Stitches' }).fill('5');
  await page.getByRole('textbox', { name: 'Rows' }).fill('3');
  await chart.drag([1, 2], [-1, 2], [-1, 3], [5, 3]);
  expect(await chart.shown()).toEqual(['#####', '#....', '.....']);
});

test('draws with the keyboard alone and says where it is', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  const row = chart.grid.getByRole('row');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('4');
  await page.getByRole('button', { name: 'Fill' }).focus();
  await page.keyboard.press('Tab');
  await expect(chart.grid).toBeFocused();

  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Space');
  await expect(announced(page)).toHaveText('Row 1, stitch 1, chalk');
  await expect(statusLine(page)).toHaveText('Row 1, stitch 1 · chalk, contrast');
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
  expect(await chart.shown()).toEqual(['.....#', '......', '.####.', '#.....']);

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
  expect(await chart.shown()).toEqual(['.....#', '......', '.####.', '......']);
  await page.keyboard.press('Control+z');
  await expect(announced(page)).toHaveText('Taken back: erase.');
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
  expect(await chart.shown()).toEqual(['......', '..##..', '###...']);
  await page.getByRole('button', { name: 'Undo draw' }).click();
  expect(await chart.shown()).toEqual(['......', '......', '......']);
});

test('fills what hangs together, and nothing beyond', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await page.getByRole('button', { name: 'Fill' }).click();
  // The lower window of the tower, in row 12.
  await chart.click(7, 9);
  const filled = LIGHTHOUSE.map((line, fromTop) => (fromTop === 8 || fromTop === 9 ? '....#####.....' : line));
  expect(await chart.shown()).toEqual(filled);
  await page.getByRole('button', { name: 'Undo fill' }).click();
  expect(await chart.shown()).toEqual(LIGHTHOUSE);
});

test('makes the motif larger and smaller on the side that is chosen', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const stitches = page.getByRole('textbox', { name: 'Stitches' });
  await stitches.fill('16');
  expect(await chart.shown()).toEqual(LIGHTHOUSE.map((line) => `${line}..`));
  await stitches.blur();
  await expect(page.getByRole('button', { name: 'Undo resize motif' })).toBeEnabled();

  await page.getByText('Name, and where it grows').click();
  await page.getByLabel('Columns come and go').selectOption('left');
  await stitches.fill('17');
  expect(await chart.shown()).toEqual(LIGHTHOUSE.map((line) => `.${line}..`));
  await page.getByLabel('Rows come and go').selectOption('bottom');
  await page.getByRole('textbox', { name: 'Rows' }).fill('17');
  expect(await chart.shown()).toEqual(LIGHTHOUSE.slice(0, -1).map((line) => `.${line}..`));
});

test('typing a size digit by digit cuts nothing', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const stitches = page.getByRole('textbox', { name: 'Stitches' });
  await stitches.click();
  await stitches.press('Control+a');
  await stitches.pressSequentially('15');
  await stitches.press('Tab');
  expect(await chart.shown()).toEqual(LIGHTHOUSE.map((line) => `${line}.`));
  await page.getByRole('button', { name: 'Undo resize motif' }).click();
  expect(await chart.shown()).toEqual(LIGHTHOUSE);
});

test('refuses a size that cannot be, and says which can', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const stitches = page.getByRole('textbox', { name: 'Stitches' });
  for (const wrong of ['0', '-3', '2.5', '1001', 'wide']) {
    await stitches.fill(wrong);
    await expect(page.getByText('A whole number from 1 to 1000.')).toBeVisible();
    expect(await chart.size()).toEqual({ columns: 14, rows: 18 });
  }
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});

test('zooms at the pointer, scrolls, pans and fits', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const fitted = await chart.cellSize();
  const place = await chart.at(7, 10);

  await page.mouse.move(place.x, place.y);
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -300);
  await page.keyboard.up('Control');
  await expect.poll(async () => (await chart.cellSize()).height).toBeGreaterThan(fitted.height * 1.3);
  const zoomed = await chart.at(7, 10);
  // Wheel events tell whole pixels.
  expect(Math.abs(zoomed.x - place.x)).toBeLessThan(1.5);
  expect(Math.abs(zoomed.y - place.y)).toBeLessThan(1.5);
  await expect(statusLine(page)).toHaveText('Row 10, stitch 7 · slate, main');

  const moved = async (): Promise<readonly [number, number]> => {
    const { x, y } = await chart.at(7, 10);
    return [Math.round(x - zoomed.x), Math.round(y - zoomed.y)];
  };
  await page.mouse.wheel(30, 40);
  await expect.poll(moved).toEqual([-30, -40]);

  await chart.grid.focus();
  await page.keyboard.down('Space');
  await page.mouse.down();
  await page.mouse.move(place.x + 50, place.y + 60);
  await page.mouse.up();
  await page.keyboard.up('Space');
  await expect.poll(moved).toEqual([20, 20]);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

  await page.mouse.down({ button: 'middle' });
  await page.mouse.move(place.x + 30, place.y + 40);
  await page.mouse.up({ button: 'middle' });
  await expect.poll(moved).toEqual([0, 0]);

  await page.keyboard.press('Control+0');
  await expect.poll(async () => chart.cellSize()).toEqual(fitted);
  await page.keyboard.press('Control+=');
  await page.keyboard.press('Control+-');
  expect((await chart.cellSize()).height).toBeCloseTo(fitted.height, 6);
  await page.getByRole('button', { name: 'Zoom in' }).click();
  await expect.poll(async () => (await chart.cellSize()).height).toBeCloseTo(fitted.height * 1.25, 6);
  await page.getByRole('button', { name: 'Show the whole motif' }).click();
  await expect.poll(async () => chart.cellSize()).toEqual(fitted);
});

test('brings the cell cursor into view', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await chart.grid.focus();
  for (let i = 0; i < 8; i++) await page.keyboard.press('Control+=');
  const stage = await chart.grid.boundingBox();
  for (const corner of ['Control+End', 'Control+Home']) {
    await page.keyboard.press(corner);
    const cell = await chart.cell.boundingBox();
    if (!cell || !stage) throw new Error('Nothing is shown');
    expect(cell.x).toBeGreaterThanOrEqual(stage.x);
    expect(cell.y).toBeGreaterThanOrEqual(stage.y);
    expect(cell.x + cell.width).toBeLessThanOrEqual(stage.x + stage.width);
    expect(cell.y + cell.height).toBeLessThanOrEqual(stage.y + stage.height);
  }
});

test('names, colours and adds yarns, and makes another one the ground', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const palette = page.getByRole('radiogroup', { name: 'Yarn in the pen' });
  await expect(palette.getByRole('radio', { name: /chalk, contrast/ })).toBeChecked();
  // Of the colours #fbf7ea and #5d7591, by WCAG's formula: (0.9321 + 0.05) / (0.1709 + 0.05).
  await expect(palette.getByRole('radio', { name: /contrast ratio 4.4 to 1/ })).toBeVisible();

  await page.getByRole('button', { name: 'Change chalk' }).click();
  await palette.getByRole('textbox', { name: 'Name' }).fill('foam');
  await expect(palette.getByRole('radio', { name: /foam, contrast/ })).toBeChecked();
  await palette.getByLabel('Colour').fill('#6a7f98');
  await expect(page.getByText('foam hardly shows against slate.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo change yarns' }).click();
  await expect(page.getByText('foam hardly shows against slate.')).toBeHidden();

  await page.getByRole('button', { name: 'Use as main' }).click();
  await expect(palette.getByRole('radio', { name: /foam, main/ })).not.toBeChecked();
  await expect(palette.getByRole('radio', { name: /slate, contrast/ })).toBeChecked();
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('No edge column is blank');
  await page.getByRole('button', { name: 'Undo choose ground' }).click();

  await page.getByRole('button', { name: 'Add a yarn' }).click();
  await expect(palette.getByRole('radio', { name: /yarn 3, contrast/ })).toBeChecked();
  await chart.click(1, 18);
  expect((await chart.shown())[0]).toBe('?.....#.......');
  await chart.hover(1, 18);
  await expect(statusLine(page)).toHaveText('Row 18, stitch 1 · yarn 3, contrast');
  await page.keyboard.press('[');
  await expect(palette.getByRole('radio', { name: /foam/ })).toBeChecked();
  await page.keyboard.press(']');

  // A yarn that undo takes away leaves the pen to one that is there.
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(palette.getByRole('radio')).toHaveCount(2);
  await expect(palette.getByRole('radio', { name: /foam/ })).toBeChecked();
  await chart.click(1, 18);
  expect((await chart.shown())[0]).toBe('#.....#.......');
});

test('shows neighbouring copies while drawing, and hides them', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const isDrawnBeside = async (): Promise<boolean> => {
    const { x, y } = await chart.at(0, 1);
    return page.evaluate(
      ([atX, atY]) => {
        const canvas = document.querySelector('canvas');
        if (!canvas) throw new Error('The chart has no canvas');
        const { left, top } = canvas.getBoundingClientRect();
        const ratio = canvas.width / canvas.clientWidth;
        const pixel = canvas.getContext('2d')?.getImageData((atX - left) * ratio, (atY - top) * ratio, 1, 1);
        return (pixel?.data[3] ?? 0) > 0;
      },
      [x, y] as const,
    );
  };
  expect(await isDrawnBeside()).toBe(true);
  await expect(page.getByText('neighbouring copies shown faintly')).toBeVisible();
  await page.getByRole('switch', { name: 'Show neighbours' }).click();
  await expect.poll(isDrawnBeside).toBe(false);
  await expect(page.getByText('neighbouring copies shown faintly')).toBeHidden();
});

test('keeps what the chart shows with the motif', async ({ page, start }) => {
  await start();
  await expect(page.getByText('As it will be seen')).toBeVisible();
  await page.getByLabel('It is drawn').selectOption('needles');
  await expect(page.getByText('As you see it on the bed while knitting.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo choose what the chart shows' }).click();
  await expect(page.getByLabel('It is drawn')).toHaveValue('worn');
});

test('reads a picture in, one pixel a cell', async ({ page, home, start }) => {
  // Netpbm, plain PBM: 1 is black, rows from the top.
  writeFileSync(join(home, 'heart.pbm'), 'P1\n5 4\n0 1 0 1 0\n1 1 1 1 1\n0 1 1 1 0\n0 0 1 0 0\n');
  await start();
  await page.getByRole('button', { name: 'File' }).click();
  await page.getByRole('button', { name: 'Open…' }).click();
  await page.getByRole('button', { name: 'heart.pbm' }).click();
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
  for (let i = 0; i < 16; i++) await page.keyboard.press('Control+=');
  await page.keyboard.press('Control+Home');
  await chart.drag([1, 1], [4, 4]);
  await page.keyboard.press('Control+End');
  await page.keyboard.press('Space');
  await expect(chart.cell).toHaveAccessibleName('Row 1000, stitch 200, chalk');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText(
    'The repeat is 200 stitches × 1000 rows',
  );
});

for (const { colorScheme, viewport } of [
  { colorScheme: 'light', viewport: { width: 1280, height: 800 } },
  { colorScheme: 'dark', viewport: { width: 1920, height: 1080 } },
] as const) {
  test.describe(`in ${colorScheme} on ${viewport.width} × ${viewport.height}`, () => {
    test.use({ colorScheme, viewport });

    test('is whole and accessible, empty and drawn', async ({ page, start }) => {
      await start('empty');
      await expectAccessible(page);
      await start('sample');
      const chart = new Chart(page);
      await page.getByRole('button', { name: 'Change chalk' }).click();
      await chart.grid.focus();
      await page.keyboard.press('ArrowRight');
      await expectAccessible(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    });
  });
}

test('follows a change of appearance at once', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  expect(await chart.shown()).toEqual(LIGHTHOUSE);
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  expect(await chart.shown()).toEqual(LIGHTHOUSE);
  await page.keyboard.press('Control+k');
  await page.keyboard.type('light');
  await page.keyboard.press('Enter');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
  expect(await chart.shown()).toEqual(LIGHTHOUSE);
});
