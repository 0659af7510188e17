/** The purl side of the piece, its strands as they lie, and the floats by length beside it. */
import { announced, cursorLine, expect, expectAccessible, statusLine, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { listenToLabels, openTwelve, picture, placeOf } from './piece-bench.ts';

/** Copies on rows 20–22: contrast floats over 24 stitches on row 20 and over 25 on the two above it; main over 11. */
const ON_ROW_20 = { band: { position: { kind: 'from-row' as const, row: 20 } } };

test('the purl side is shown by a key, says which side it is, and goes back to the flat piece', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openTwelve(page, home, [3, 3], ON_ROW_20);
  const flat = page.getByRole('grid', { name: 'as on the needles' });
  await flat.focus();
  await page.keyboard.press('b');
  const purl = page.getByRole('grid', { name: 'purl side' });
  await expect(purl).toBeFocused();
  await expect(page.getByRole('heading', { name: 'Piece, purl side' })).toBeVisible();
  await expect(page.getByText('As it faces you at the machine; worn inside.')).toBeVisible();
  for (const name of ['Show the fabric as stitches', 'Show the piece as worn']) {
    await expect(page.getByRole('button', { name })).toBeDisabled();
  }
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);

  // The cursor goes by keys as it does on the flat piece, L at the left.
  await page.keyboard.press('Control+Home');
  await expect(cursorLine(page)).toContainText('Row 1 · needle L60');
  await page.keyboard.press('ArrowRight');
  await expect(cursorLine(page)).toContainText('needle L59');

  await page.keyboard.press('b');
  await expect(flat).toBeFocused();
  await expect(announced(page)).toContainText('The piece is opened flat.');
});

test('strands are said where they are pointed at, and drawn as floats and wraps are shown', async ({
  page,
  start,
  home,
}) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3], ON_ROW_20);
  await page.getByRole('grid').press('b');
  await expect(page.getByRole('grid', { name: 'purl side' })).toBeFocused();
  const withFloats = await picture(page);
  await page.keyboard.press('f');
  await expect.poll(() => picture(page)).not.toBe(withFloats);
  await page.keyboard.press('f');
  await expect.poll(() => picture(page)).toBe(withFloats);

  const { x, y } = await placeOf(page, 0, 20);
  await page.mouse.move(x, y);
  await expect(statusLine(page)).toHaveText(/^Row 20 · needle R1 .*float of 24/);
  await expect.poll(labels).toContain('24');
});

test('a bar of the floats by length leads from one float of its length to the next', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3], ON_ROW_20);
  await page.getByRole('grid').press('b');
  const lengths = page.getByRole('region', { name: 'Floats by length' });
  await expect(lengths).toContainText('limit 5');
  await expect(lengths).toContainText('up to 25 stitches');
  // By keyboard: the bar has the focus, and keeps it from float to float.
  const bar = lengths.getByRole('button', { name: /^2[1-5](–2[5-9])? stitches: 3 of / });
  await bar.focus();
  await page.keyboard.press('Enter');
  await expect(cursorLine(page)).toContainText('Row 20 ·');
  await expect(announced(page)).toContainText('floats over 24 stitches');
  await page.keyboard.press('Enter');
  await expect(cursorLine(page)).toContainText('Row 21 ·');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(cursorLine(page)).toContainText('Row 20 ·');
  await expect(bar).toBeFocused();
});
