/** A picture behind the chart, traced. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { announced, expect, expectAccessible, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import { pngOf } from '../unit/picture/pictures.ts';

test.use({ colorScheme: 'dark' });

test('lays a picture behind the chart, moves and hides it, draws over it and keeps it with the motif', async ({
  page,
  start,
  home,
}) => {
  const rows = Array.from({ length: 60 }, (_, y) =>
    Array.from({ length: 60 }, (_, x) => (Math.hypot(x - 30, y - 30) < 20 ? '#202020' : '#f0f0f0')),
  );
  writeFileSync(join(home, 'moon.png'), pngOf(rows));
  await start('empty');
  const chart = new Chart(page);
  await chart.grid.focus();
  await page.keyboard.press('Shift+Q');
  await new FilePanel(page).open('moon.png');
  await expect(announced(page)).toHaveText('The picture lies behind the chart.');
  const picture = page.locator('img');
  await expect(picture).toBeVisible();
  // Cells of the ground are open over it, those of the figure are not.
  await chart.drag([3, 3], [4, 3]);
  await expect.poll(async () => (await chart.shown()).at(-3)?.slice(0, 5)).toBe('??##?');

  await page.keyboard.press('u');
  const before = await restingBox(picture);
  const cell = await chart.cellSize();
  await chart.drag([5, 5], [7, 6]);
  const dragged = await restingBox(picture);
  expect(dragged.x - before.x).toBeCloseTo(2 * cell.width, 0);
  expect(dragged.y - before.y).toBeCloseTo(-cell.height, 0);
  await page.keyboard.press('Shift+ArrowLeft');
  await expect(announced(page)).toContainText('It starts');
  await expect.poll(async () => (await restingBox(picture)).x).toBeCloseTo(dragged.x - cell.width, 0);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(async () => (await restingBox(picture)).x).toBeCloseTo(before.x, 0);
  await expectAccessible(page);

  await page.keyboard.press('h');
  await expect(picture).toBeHidden();
  await page.getByRole('switch', { name: 'Show it' }).click();
  await expect(picture).toBeVisible();
  await page.getByRole('button', { name: 'Remove the picture to trace' }).click();
  await expect(picture).toBeHidden();
  await page.getByRole('button', { name: 'Undo remove picture to trace' }).click();
  await expect(picture).toBeVisible();
});
