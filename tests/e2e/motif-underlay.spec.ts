/** A picture behind the chart, traced. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
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
  // The tool offers the picture that it would move.
  await page.getByRole('button', { name: 'Move the picture to trace' }).click();
  const strip = page.getByRole('region', { name: 'Yarns and drawing options' });
  const toAdd = strip.getByRole('button', { name: 'Add a picture to trace' });
  await expect(toAdd).toBeInViewport();
  await page.getByRole('button', { name: 'Draw', exact: true }).click();
  await expect(toAdd).toHaveCount(0);
  await chart.grid.focus();
  await page.keyboard.press('Shift+Q');
  await new FilePanel(page).open('moon.png');
  await expect(announced(page)).toHaveText('The picture lies behind the chart.');
  const picture = page.getByRole('main').locator('img');
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

test('scales and turns the picture by its handles, by pointer and by keyboard, each one step of undo', async ({
  page,
  start,
  home,
}) => {
  const rows = Array.from({ length: 40 }, (_, y) =>
    Array.from({ length: 40 }, (_, x) => (x > y ? '#202020' : '#f0f0f0')),
  );
  writeFileSync(join(home, 'sail.png'), pngOf(rows));
  await start('empty');
  const chart = new Chart(page);
  await chart.grid.focus();
  await page.keyboard.press('Shift+Q');
  await new FilePanel(page).open('sail.png');
  await expect(announced(page)).toHaveText('The picture lies behind the chart.');
  await page.keyboard.press('u');
  const picture = page.getByRole('main').locator('img');
  const before = await restingBox(picture);
  const corner = (name: string) => page.getByRole('button', { name: new RegExp(`^${name}`) });
  await expect(corner('Lower right corner')).toBeAttached();

  // The upper left corner stays; the picture keeps its proportion.
  const drag = async (from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> => {
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2);
    await page.mouse.move(to.x, to.y);
    await page.mouse.up();
  };
  const end = { x: before.x + before.width, y: before.y + before.height };
  await drag(end, { x: end.x - before.width / 4, y: end.y - before.height / 4 });
  await expect(announced(page)).toContainText('It covers');
  const smaller = await restingBox(picture);
  // The mouse is told in whole pixels.
  expect(Math.abs(smaller.width - before.width * 0.75)).toBeLessThan(1.5);
  expect(Math.abs(smaller.height - before.height * 0.75)).toBeLessThan(1.5);
  expect(smaller.x).toBeCloseTo(before.x, 0);
  expect(smaller.y).toBeCloseTo(before.y, 0);
  await page.getByRole('button', { name: 'Undo scale picture to trace' }).click();
  await expect.poll(async () => (await restingBox(picture)).width).toBeCloseTo(before.width, 0);

  // The ring over its upper edge, dragged to the right of its middle: a quarter turn.
  const middle = { x: before.x + before.width / 2, y: before.y + before.height / 2 };
  const away = before.height / 2 + 36;
  await drag({ x: middle.x, y: middle.y - away }, { x: middle.x + away, y: middle.y });
  await expect(announced(page)).toHaveText('It is turned 90° clockwise.');
  await expect(picture).toHaveCSS('transform', /^matrix\((-?[\d.e-]+), 1,/);
  await page.getByRole('button', { name: 'Undo turn picture to trace' }).click();
  await expect(picture).toHaveCSS('transform', 'none');

  // By keys: a degree, ten with Shift; a corner by pixels.
  await page.getByRole('button', { name: /^Handle that turns the picture/ }).focus();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowLeft');
  await expect(announced(page)).toHaveText('It is turned 9° clockwise.');
  await page.getByRole('button', { name: /^Handle that turns the picture/ }).press('Control+z');
  await expect(announced(page)).toHaveText('Undone: turn picture to trace.');
  await corner('Upper left corner').focus();
  await page.keyboard.press('Shift+ArrowLeft');
  await expect.poll(async () => (await restingBox(picture)).width).toBeGreaterThan(before.width);
  await expectAccessible(page);
  await appearAs(page, 'light');
  await expectAccessible(page);
});
