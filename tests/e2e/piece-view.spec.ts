/** The Piece bench: what is drawn of the piece, and what is said of it. */
import { announced, cursorLine, expect, statusLine, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { forgetLabels, listenToLabels, openTwelve, picture, placeOf } from './piece-bench.ts';

test('shows floats and wraps, and hides either', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const floats = page.getByRole('button', { name: 'Show floats' });
  const wraps = page.getByRole('button', { name: 'Show wraps' });
  await expect(floats).toHaveAttribute('aria-pressed', 'true');
  const both = await picture(page);

  await page.keyboard.press('f');
  await expect(floats).toHaveAttribute('aria-pressed', 'false');
  const noFloats = await picture(page);
  expect(noFloats).not.toBe(both);

  await wraps.click();
  await expect(wraps).toHaveAttribute('aria-pressed', 'false');
  const neither = await picture(page);
  expect(neither).not.toBe(noFloats);

  await floats.click();
  await page.keyboard.press('w');
  await expect.poll(() => picture(page)).toBe(both);

  const stitches = page.getByRole('button', { name: 'Show the fabric as stitches' });
  await stitches.click();
  await expect(stitches).toHaveAttribute('aria-pressed', 'true');
  await expect.poll(() => picture(page)).not.toBe(both);
  await page.keyboard.press('v');
  await expect.poll(() => picture(page)).toBe(both);
});

test('turns the piece to be seen as worn, and keeps the names of the needles', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3]);
  const cell = page.getByRole('gridcell');
  const needles = await restingBox(cell);
  const grid = page.getByRole('grid');
  const whole = await restingBox(grid);
  await forgetLabels(page);
  await page.getByRole('button', { name: 'Show the piece as worn' }).click();
  await expect(page.getByRole('main').getByText('L stands at the right here')).toBeVisible();
  // What is said in passing has room at the foot of the window.
  await expect(announced(page)).toHaveText('As worn: the knit side, with L at the right.');
  expect(await announced(page).evaluate((said) => said.scrollWidth - said.clientWidth)).toBe(0);
  // The first needle, L48, has gone from the left half to the right one, as far from the centre as before.
  await expect(cell).toHaveAccessibleName(/needle L48/);
  const worn = await restingBox(cell);
  const middle = whole.x + whole.width / 2;
  expect(needles.x).toBeLessThan(middle);
  expect(worn.x).toBeGreaterThan(middle);
  // Strands lie behind the knit side, so their tags are gone; the ruler's labels are not.
  await picture(page);
  await expect.poll(labels).toContain('L48');
  await expect.poll(labels).not.toContain('25');

  await grid.focus();
  await page.keyboard.press('ArrowRight');
  await expect(cell).toHaveAccessibleName(/needle L49/);
  await page.keyboard.press('Home');
  await expect(cell).toHaveAccessibleName(/needle R60/);
  await page.keyboard.press('t');
  await expect(page.getByRole('main').getByText('The purl side faces you; the knit side will be seen.')).toBeVisible();
});

test('tags the longest float with its stitches only while floats show', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3]);
  // The contrast floats from L12 to R12 and on over the blank column: 24 stitches on the bottom row, 25 above it.
  await expect.poll(labels).toContain('25');
  await forgetLabels(page);
  await page.keyboard.press('f');
  await picture(page);
  await expect.poll(labels).toContain('L48');
  await expect.poll(labels).not.toContain('25');
});

test('says what is under the pointer', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3], { band: { position: { kind: 'from-row', row: 20 } } });
  const { x, y } = await placeOf(page, -13, 20);
  await page.mouse.move(x, y);
  await expect(statusLine(page)).toHaveText(
    'Row 20 · needle L13 · contrast, last before the gap · carriage at the left · float of 24, too long, to the right',
  );
  const beside = await placeOf(page, 61, 20);
  await page.mouse.move(beside.x, beside.y);
  await expect(statusLine(page)).toHaveText('Row 20 · needle R62 · beside the piece');
});

test('is read stitch by stitch from the keyboard', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3], { band: { position: { kind: 'from-row', row: 20 } } });
  const grid = page.getByRole('grid', { name: /as on the needles/ });
  await expect(grid).toHaveAttribute('aria-rowcount', '60');
  await expect(grid).toHaveAttribute('aria-colcount', '120');
  await grid.focus();
  await expect(grid.getByRole('gridcell')).toHaveAccessibleName(/^Row 20 · needle L48 · main/);
  await page.keyboard.press('ArrowRight');
  await expect(cursorLine(page)).toHaveText(/^Cursor: Row 20 · needle L47 · contrast, first of the pattern/);
  await expect(announced(page)).toHaveText(/^Row 20 · needle L47/);
  await page.keyboard.press('ArrowUp');
  await expect(grid.getByRole('row')).toHaveAttribute('aria-rowindex', '21');
  await page.keyboard.press('End');
  await expect(cursorLine(page)).toHaveText(/^Cursor: Row 21 · needle R60 · main, edge stitch/);
  await page.keyboard.press('ArrowRight');
  await expect(cursorLine(page)).toHaveText(/needle R60/);
  await page.keyboard.press('Control+Home');
  await expect(cursorLine(page)).toHaveText(/^Cursor: Row 1 · needle L60/);
});

test('zooms at the pointer, pans, and comes back to the whole piece', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const cell = page.getByRole('gridcell');
  const whole = await restingBox(cell);
  const grid = await restingBox(page.getByRole('grid'));
  const [x, y] = [grid.x + grid.width / 2, grid.y + grid.height / 2];
  await page.mouse.move(x, y);
  const status = await statusLine(page).textContent();
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -400);
  await page.keyboard.up('Control');
  await expect.poll(async () => (await restingBox(cell)).width).toBeGreaterThan(whole.width * 1.5);
  await expect(statusLine(page)).toHaveText(status ?? '');

  const near = await restingBox(cell);
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 30, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => (await restingBox(cell)).x - near.x).toBeCloseTo(60, 0);
  await page.keyboard.press('0');
  await expect.poll(() => restingBox(cell)).toEqual(whole);
});
