/** The Motif bench under fingers: one draws, two move the chart. */
import { cursorLine, expect, test } from './app.ts';
import { Chart } from './chart.ts';
import { touch } from './touch.ts';

test.use({ hasTouch: true });

test('draws with one finger, and pans and zooms with two without leaving a mark', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  await page.getByRole('textbox', { name: 'Stitches' }).fill('8');
  await page.getByRole('textbox', { name: 'Rows' }).fill('6');
  const glass = await page.context().newCDPSession(page);

  await touch(glass, 'touchStart', await chart.at(2, 2));
  await touch(glass, 'touchMove', await chart.at(6, 2));
  await touch(glass, 'touchEnd');
  const drawn = ['........', '........', '........', '........', '.#####..', '........'];
  await expect.poll(() => chart.shown()).toEqual(drawn);

  // The first of the two fingers comes down on a cell before the second one does.
  const before = await chart.cellSize();
  const one = await chart.at(3, 5);
  const other = await chart.at(6, 5);
  await touch(glass, 'touchStart', one);
  await touch(glass, 'touchStart', one, other);
  const apart = (other.x - one.x) / 2;
  for (const share of [0.5, 1]) {
    await touch(glass, 'touchMove', { x: one.x - apart * share, y: one.y }, { x: other.x + apart * share, y: other.y });
  }
  await touch(glass, 'touchEnd');
  // The fingers stand twice as far apart, so cells are twice as large, and nothing was drawn.
  await expect.poll(async () => (await chart.cellSize()).width / before.width).toBeCloseTo(2, 1);
  await expect(page.getByRole('button', { name: 'Redo', exact: true })).toBeDisabled();
  await chart.grid.focus();
  await page.keyboard.press('0');
  await expect.poll(() => chart.shown()).toEqual(drawn);
  await page.getByRole('button', { name: 'Undo draw' }).click();
  await expect.poll(() => chart.shown()).toEqual(Array(6).fill('........'));
});

test('shows the motif as fabric from either side, and draws on it', async ({ page, start }) => {
  await start('empty');
  const chart = new Chart(page);
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('4');
  await chart.drag([1, 1], [1, 4]);
  await page.getByLabel('Shown as').selectOption('fabric, knit side');
  // Light and shadow of the yarn change its colour, but never to that of the other one.
  await expect.poll(() => chart.yarns()).toEqual(Array(4).fill('#.....'));
  await chart.click(3, 2);
  await expect.poll(() => chart.yarns()).toEqual(['#.....', '#.....', '#.#...', '#.....']);

  // An as-worn chart shows the knit side, so the purl side has left and right changed.
  await expect(page.getByText('the knit side is seen · neighbouring copies shown faintly')).toBeVisible();
  await page.getByLabel('Shown as').selectOption('fabric, purl side');
  await expect(page.getByText('the purl side is seen')).toBeVisible();
  await expect.poll(() => chart.yarns()).toEqual(['.....#', '.....#', '...#.#', '.....#']);
  await page.mouse.move(0, 0);
  await chart.grid.focus();
  await page.keyboard.press('Control+Home');
  await expect(cursorLine(page)).toHaveText('Cursor: Row 1, stitch 6 · slate, main');
  await page.keyboard.press('ArrowRight');
  await expect(cursorLine(page)).toHaveText('Cursor: Row 1, stitch 5 · slate, main');
  await page.keyboard.press('Space');
  await expect.poll(() => chart.yarns()).toEqual(['.....#', '.....#', '...#.#', '.#...#']);

  await page.keyboard.press('v');
  await expect(page.getByLabel('Shown as')).toHaveValue('chart');
  await expect.poll(() => chart.shown()).toEqual(['#.....', '#.....', '#.#...', '#...#.']);
});
