/** Groups of the piece under fingers, under the mouse's other buttons, and where two are drawn close. */
import type { Page } from '@playwright/test';
import { announced, expect, statusLine, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { openTwelve } from './piece-bench.ts';
import { touch, type Spot } from './touch.ts';

const meaning = (page: Page) => page.getByRole('region', { name: 'What it is' });

/** A stitch of the group at L48, and the size of one. */
async function stitchOfGroup(page: Page): Promise<Spot & { readonly width: number; readonly height: number }> {
  const cell = page.getByRole('gridcell');
  await expect(cell).toHaveAccessibleName(/needle L48/);
  const { x, y, width, height } = await restingBox(cell);
  return { x: x + width * 2.5, y: y - height / 2, width, height };
}

test.use({ hasTouch: true });

test('one finger moves a group, a tap chooses it, and two zoom and move nothing', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const glass = await page.context().newCDPSession(page);
  const { x, y, width, height } = await stitchOfGroup(page);

  await touch(glass, 'touchStart', { x, y });
  for (const needles of [1, 2, 3]) await touch(glass, 'touchMove', { x: x + needles * width, y });
  await expect(statusLine(page)).toContainText('Group 1 · needles L45–L10');
  await touch(glass, 'touchEnd');
  await expect(meaning(page)).toContainText('L45 and R12');
  await page.getByRole('button', { name: 'Undo move a group' }).click();
  await expect(meaning(page)).toContainText('L48 and R12');

  // The second finger comes down while the first drags.
  await touch(glass, 'touchStart', { x, y });
  await touch(glass, 'touchMove', { x: x + 2 * width, y });
  await expect(statusLine(page)).toContainText('Group 1 · needles L46');
  const other = { x: x + 40 * width, y: y - 60 };
  await touch(glass, 'touchStart', { x: x + 2 * width, y }, other);
  await expect(announced(page)).toContainText('The group stays where it was');
  await touch(glass, 'touchMove', { x: x - 20 * width, y }, other);
  await touch(glass, 'touchEnd');
  await expect.poll(async () => (await restingBox(page.getByRole('gridcell'))).width).toBeGreaterThan(width * 1.2);
  await expect(meaning(page)).toContainText('L48 and R12');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

  await page.getByRole('button', { name: 'Fit the whole piece' }).click();
  await touch(glass, 'touchStart', { x, y });
  await touch(glass, 'touchEnd');
  // Its second row, and the third needle from L48.
  await expect(page.getByRole('gridcell')).toHaveAccessibleName(/needle L46/);
  await expect(page.getByRole('grid')).toBeFocused();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(meaning(page)).toContainText('L47 and R12');
  expect(height).toBeGreaterThan(0);
});

test('the middle button pans from a group as from anywhere, and a press that does not move chooses it', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const { x, y, width } = await stitchOfGroup(page);
  await page.mouse.move(x, y);
  await expect(page.getByRole('grid')).toHaveCSS('cursor', 'grab');
  await page.mouse.down({ button: 'middle' });
  await page.mouse.move(x - 10 * width, y, { steps: 3 });
  await page.mouse.up({ button: 'middle' });
  await expect(meaning(page)).toContainText('L48 and R12');
  const moved = await stitchOfGroup(page);
  expect(moved.x).toBeCloseTo(x - 10 * width, 0);

  await page.mouse.click(moved.x, moved.y);
  await expect(page.getByRole('gridcell')).toHaveAccessibleName(/needle L46/);
  await page.keyboard.press('Shift+ArrowRight');
  await expect(meaning(page)).toContainText('L47 and R12');
  // Beside every group it is a cell that is looked at.
  await page.mouse.move(moved.x, moved.y - 100);
  await expect(page.getByRole('grid')).toHaveCSS('cursor', 'crosshair');
});
