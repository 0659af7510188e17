/** Several motifs in a project: their list, the stamp, and the group that takes one of them. */
import type { Locator, Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { Chart, LIGHTHOUSE } from './chart.ts';

const motifs = (page: Page): Locator => page.getByRole('radiogroup', { name: 'Motif on the bench' });

/** Pixels of an image, a line of text a row; the upper left one is a dot, and all others like it. */
const pixelsOf = (image: Locator): Promise<string[]> =>
  image.evaluate((shown: HTMLImageElement) => {
    const { naturalWidth: width, naturalHeight: height } = shown;
    const context = new OffscreenCanvas(width, height).getContext('2d') as OffscreenCanvasRenderingContext2D;
    context.drawImage(shown, 0, 0);
    const colours = new Uint32Array(context.getImageData(0, 0, width, height).data.buffer);
    const line = (row: number): string =>
      [...colours.subarray(row * width, (row + 1) * width)].map((one) => (one === colours[0] ? '.' : '#')).join('');
    return Array.from({ length: height }, (_, row) => line(row));
  });

test('adds a motif, stamps another into it by mouse and by keyboard, and gives it to a group', async ({
  page,
  start,
}) => {
  await start();
  const chart = new Chart(page);
  const list = motifs(page);
  await expect(page.getByRole('button', { name: 'Stamp another motif' })).toBeDisabled();
  await page.getByRole('button', { name: 'Add an empty motif' }).click();
  await expect(list.getByRole('radio')).toHaveCount(2);
  await expect.poll(() => chart.size()).toEqual({ columns: 14, rows: 18 });

  // A smaller one to stamp.
  await page.getByRole('textbox', { name: 'Stitches' }).fill('3');
  await page.getByRole('textbox', { name: 'Rows' }).fill('2');
  await chart.drag([1, 2], [2, 1], [3, 2]);
  await expect.poll(() => chart.shown()).toEqual(['#.#', '.#.']);

  await page.keyboard.press(',');
  await expect(announced(page)).toContainText('lighthouse and gulls, 14 stitches × 18 rows');
  await page.getByRole('button', { name: 'Stamp another motif' }).click();
  await chart.hover(2, 17);
  await expect
    .poll(async () => (await chart.shown()).slice(0, 3))
    .toEqual(['#.#...#.......', '.#...###......', '....#####.....']);
  await chart.click(2, 17);
  await chart.hover(12, 17);
  await expect.poll(async () => (await chart.shown())[0]).toBe('#.#...#...#.#.');
  await chart.grid.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Space');
  await expect(announced(page)).toHaveText('Stamped.');
  await page.keyboard.press('d');
  await expect.poll(async () => (await chart.shown()).slice(0, 2)).toEqual(['#.#...#....#.#', '.#...###....#.']);
  await page.getByRole('button', { name: 'Undo stamp motif' }).click();
  await page.getByRole('button', { name: 'Undo stamp motif' }).click();
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);

  // A motif that the piece needs stays.
  await page.getByRole('button', { name: 'Delete the motif' }).click();
  await expect(page.getByText('is knitted in pattern band 1 of the piece.')).toBeVisible();
  await chart.grid.press('2');
  await page.getByRole('button', { name: 'Motif of group 1: lighthouse and gulls' }).click();
  await page.getByRole('button', { name: 'motif 2', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Undo choose motif of a group' })).toBeVisible();
  await page.getByRole('grid').press('1');
  await page.keyboard.press('p');
  await expectAccessible(page);
});

test('draws no picture in the list again but that of the motif which is drawn on, and all in another colour', async ({
  page,
  start,
}) => {
  await start();
  for (let count = 2; count <= 4; count++) {
    await page.getByRole('button', { name: 'Add an empty motif' }).click();
    await expect(motifs(page).getByRole('radio')).toHaveCount(count);
  }
  const chart = new Chart(page);
  await page.evaluate(() => {
    const counted = window as unknown as { drawn: number[] };
    counted.drawn = [];
    const rows = [...document.querySelectorAll('[role=radiogroup] li:has(img)')];
    new MutationObserver((changes) => {
      for (const { target } of changes) counted.drawn.push(rows.findIndex((row) => row.contains(target)));
    }).observe(document.body, { subtree: true, attributeFilter: ['src'] });
  });
  const drawn = (): Promise<number[]> => page.evaluate(() => (window as unknown as { drawn: number[] }).drawn);
  await chart.click(2, 2);
  await expect.poll(drawn).toEqual([3]);
  await chart.drag([3, 2], [4, 2], [5, 2]);
  await expect.poll(async () => (await chart.shown()).at(-2)).toBe('.####.........');
  // As the browser decodes it: the cells of the chart, one pixel each.
  await expect.poll(() => pixelsOf(motifs(page).locator('img').last())).toEqual(await chart.shown());
  expect(new Set(await drawn())).toEqual(new Set([3]));

  await page.getByRole('button', { name: 'Change chalk' }).click();
  await page.getByRole('radiogroup', { name: 'Drawing yarn' }).getByLabel('Colour').fill('#6a7f98');
  await expect.poll(async () => new Set(await drawn())).toEqual(new Set([0, 1, 2, 3]));
});
