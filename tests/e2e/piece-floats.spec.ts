/** Floats on the Piece bench: the profile beside the row numbers, and the strands of what is pointed at. */
import type { Page } from '@playwright/test';
import { cursorLine, expect, expectAccessible, statusLine, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
import { forgetLabels, listenToLabels, openTwelve, picture, placeOf } from './piece-bench.ts';

const profile = (page: Page) => page.getByRole('slider', { name: 'Longest floats, row by row' });

/** Copies on rows 20–22: contrast floats over 24 stitches on row 20 and over 25 on the two above it; main over 11. */
const ON_ROW_20 = { band: { position: { kind: 'from-row' as const, row: 20 } } };

test('the profile has the longest float of each row, and leaves the motif without tags', async ({
  page,
  start,
  home,
}) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3], ON_ROW_20);
  // Its heading, the limit, and the longest of each yarn.
  for (const said of ['longest floats', 'slate', 'chalk', '5', '11', '25']) await expect.poll(labels).toContain(said);
  // Each of the main yarn's floats over 11 would be on a tag of its own; on the profile one number stands for all.
  const times = async (text: string): Promise<number> => (await labels()).filter((said) => said === text).length;
  expect(await times('11')).toBeLessThanOrEqual(await times('longest floats'));
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
});

test('the strands of a row are drawn with their stitches while it is pointed at', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3], ON_ROW_20);
  const plain = await picture(page);
  await forgetLabels(page);
  const { x, y } = await placeOf(page, -13, 20);
  await page.mouse.move(x, y);
  await expect.poll(labels).toContain('11');
  await expect.poll(labels).toContain('24');
  await expect.poll(() => picture(page)).toBe(plain);

  // On the profile it is the row that counts.
  await forgetLabels(page);
  const bars = await restingBox(profile(page));
  await page.mouse.move(bars.x + bars.width / 2, y);
  await expect(statusLine(page)).toHaveText(/^Row 20 · needle L\d+/);
  await expect.poll(labels).toContain('24');
});

test('the profile is pressed, and walked by keyboard with its row said', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3], ON_ROW_20);
  const { y } = await placeOf(page, -13, 21);
  const bars = await restingBox(profile(page));
  await page.mouse.click(bars.x + bars.width / 2, y);
  await expect(profile(page)).toHaveAttribute('aria-valuenow', '21');
  await expect(profile(page)).toHaveAttribute(
    'aria-valuetext',
    'Row 21: longest float 25 stitches, too long; slate 10',
  );
  await page.mouse.move(5, 5);

  // By keyboard, from the drawing on.
  await page.getByRole('grid').focus();
  await page.keyboard.press('Tab');
  await expect(profile(page)).toBeFocused();
  await forgetLabels(page);
  await page.keyboard.press('ArrowDown');
  await expect(profile(page)).toHaveAttribute(
    'aria-valuetext',
    'Row 20: longest float 24 stitches, too long; slate 11',
  );
  await expect.poll(labels).toContain('24');
  await expect(cursorLine(page)).toHaveText(/^Cursor: Row 20 · /);
  await page.keyboard.press('PageUp');
  await expect(profile(page)).toHaveAttribute('aria-valuetext', 'Row 30: no float');
  await page.keyboard.press('Home');
  await expect(profile(page)).toHaveAttribute('aria-valuenow', '1');
  await page.keyboard.press('End');
  await expect(profile(page)).toHaveAttribute('aria-valuenow', '60');
  await expectAccessible(page);

  // With floats hidden there is nothing to walk.
  await page.getByRole('grid').press('f');
  await expect(profile(page)).toHaveCount(0);
});

test('from near all strands have room', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  // In the middle of the view, which is zoomed about.
  await openTwelve(page, home, [8], { band: { position: { kind: 'from-row', row: 29 } } });
  await picture(page);
  await forgetLabels(page);
  for (let press = 0; press < 8; press++) await page.keyboard.press('+');
  await expect.poll(labels).toContain('11');
});

test('groups have their numbers on the drawing, and say at which side they are worn', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3]);
  // The knit side is worn outside: what stands at the left on the needles is at the right.
  for (const said of ['1 · right as worn', '2 · left as worn']) await expect.poll(labels).toContain(said);
});
