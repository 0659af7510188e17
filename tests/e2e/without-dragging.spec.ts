/** What is dragged has another way: two presses, fields or buttons (WCAG 2.2, 2.5.7). */
import type { Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { Chart } from './chart.ts';

async function drop(page: Page): Promise<void> {
  await page.evaluate(() => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="90" height="60"><rect width="90" height="60" fill="#888"/></svg>';
    const data = new DataTransfer();
    data.items.add(new File([svg], 'grey.svg', { type: 'image/svg+xml' }));
    document.querySelector('.window')?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
  });
}

test('a corner of a chart goes where the photo is pressed next', async ({ page, start }) => {
  await start();
  await drop(page);
  await page.getByRole('button', { name: /^A chart/ }).click();
  const ring = page.getByRole('button', { name: /^top left corner/ });
  const name = (await ring.getAttribute('aria-label')) ?? '';
  const photo = await restingBox(page.getByRole('group', { name: /^The photo/ }));
  const from = await restingBox(ring);
  await page.mouse.click(from.x + from.width / 2, from.y + from.height / 2);
  await expect(ring).toHaveAttribute('aria-label', name);
  await page.mouse.click(photo.x + photo.width / 4, photo.y + photo.height / 2);
  await expect(ring).not.toHaveAttribute('aria-label', name);
  const box = await restingBox(ring);
  expect(Math.abs(box.x + box.width / 2 - (photo.x + photo.width / 4))).toBeLessThan(2);
  expect(Math.abs(box.y + box.height / 2 - (photo.y + photo.height / 2))).toBeLessThan(2);
  // The next press moves nothing.
  await page.mouse.click(photo.x + photo.width / 2, photo.y + photo.height / 2);
  expect(await restingBox(ring)).toEqual(box);
});

test('a corner of the part of a picture goes where the picture is pressed next', async ({ page, start }) => {
  await start();
  await drop(page);
  await page.getByRole('button', { name: 'Any picture' }).click();
  const dialog = page.getByRole('dialog');
  const width = dialog.getByRole('textbox', { name: 'Width' });
  const height = dialog.getByRole('textbox', { name: 'Height' });
  const whole = [Number(await width.inputValue()), Number(await height.inputValue())] as const;
  const corner = await restingBox(dialog.getByRole('button', { name: /^bottom right corner/ }));
  const picture = await restingBox(dialog.getByRole('group', { name: 'The picture grey' }));
  await page.mouse.click(corner.x + corner.width / 2, corner.y + corner.height / 2);
  await expect(width).toHaveValue(String(whole[0]));
  await page.mouse.click(picture.x + picture.width / 2, picture.y + picture.height / 2);
  // A pixel of the screen is some pixels of the picture.
  const share = async (): Promise<string> =>
    `${(Number(await width.inputValue()) / whole[0]).toFixed(1)} ${(Number(await height.inputValue()) / whole[1]).toFixed(1)}`;
  await expect.poll(share).toBe('0.5 0.5');
});

test('a group is chosen and moved by buttons', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByText('Move a group by buttons').click();
  const group = page.getByRole('group', { name: 'Move a group by buttons' });
  const buttons = group.getByRole('button');
  await expect(buttons).toHaveCount(8);
  await buttons.nth(1).click();
  await expect(announced(page)).toHaveText(/^Group 1/);
  const before = await announced(page).textContent();
  await buttons.nth(3).click();
  await expect(announced(page)).not.toHaveText(before ?? '');
  await expect(page.getByRole('button', { name: /^Undo move/ })).toBeVisible();
});

/** A corner of three cells at the lower left of 6 × 3, with Select taken up. */
async function cornerChart(page: Page): Promise<Chart> {
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('3');
  const chart = new Chart(page);
  await chart.click(1, 2);
  await chart.click(1, 1);
  await chart.click(2, 1);
  await page.getByRole('button', { name: 'Select cells' }).click();
  return chart;
}
const CORNER = ['......', '#.....', '##....'];
/** What stands on the chart about cells outside it. */
const note = (page: Page) => page.getByRole('main').getByRole('status').filter({ hasText: /chart/ });

test('cells are selected by pressing two corners, and moved by pressing one and where it goes', async ({
  page,
  start,
}) => {
  await start('empty');
  const chart = await cornerChart(page);
  await chart.click(2, 2);
  await expect(announced(page)).toContainText('Selected: 1 stitch × 1 row.');
  await chart.click(1, 1);
  await expect(announced(page)).toContainText('Selected: 2 stitches × 2 rows.');
  await chart.click(2, 1);
  await expect(announced(page)).toContainText('Taken hold of row 1, stitch 2.');
  await chart.click(5, 2);
  await expect(announced(page)).toHaveText('Its lower left corner: row 2, stitch 4');
  await expect.poll(() => chart.shown()).toEqual(['...#..', '...##.', '......']);
  // By one stitch, onto itself.
  await chart.click(4, 2);
  await chart.click(5, 2);
  await expect(announced(page)).toHaveText('Its lower left corner: row 2, stitch 5');
  // The press after that lays it down: one step of undo.
  await chart.click(1, 1);
  await expect(page.getByRole('button', { name: 'Undo move cells' })).toBeVisible();
  await expect.poll(() => chart.shown()).toEqual(['....#.', '....##', '......']);
  await page.getByRole('button', { name: 'Undo move cells' }).click();
  await expect.poll(() => chart.shown()).toEqual(CORNER);
});

test('cells that are put over the edge by a press say so, and what is left off when they are laid', async ({
  page,
  start,
}) => {
  await start('empty');
  const chart = await cornerChart(page);
  await chart.click(1, 1);
  await chart.click(2, 2);
  await chart.click(1, 1);
  await chart.click(6, 1);
  await expect(note(page)).toHaveText('Outside the chart: 1 stitch at the right. Placed here, they are left off.');
  await page.getByRole('button', { name: 'Place it' }).click();
  await expect(note(page)).toHaveText('Left off outside the chart: 1 stitch at the right. Undo brings them back.');
  await expect.poll(() => chart.shown()).toEqual(['......', '.....#', '.....#']);
});

test('a press that becomes a drag means the drag, whatever was pressed before it', async ({ page, start }) => {
  await start('empty');
  const chart = await cornerChart(page);
  await chart.click(6, 3);
  await chart.drag([1, 1], [2, 2]);
  await expect(announced(page)).toContainText('Selected: 2 stitches × 2 rows.');
  await chart.click(1, 1);
  await chart.drag([4, 1], [6, 1]);
  await expect(announced(page)).toContainText('Selected: 3 stitches × 1 row.');
  await expect.poll(() => chart.shown()).toEqual(CORNER);
  await page.keyboard.press('r');
  await chart.click(1, 3);
  await chart.drag([4, 1], [6, 3]);
  await expect.poll(() => chart.shown()).toEqual(['...###', '#..#.#', '##.###']);
});

test('lines, rectangles and ellipses go from one press to the next, and are seen on the way', async ({
  page,
  start,
}) => {
  await start('empty');
  const chart = await cornerChart(page);
  await page.getByRole('button', { name: 'Draw a rectangle' }).click();
  await chart.click(4, 1);
  await expect(announced(page)).toHaveText('Rectangle from row 1, stitch 4. Press where it ends; Escape cancels.');
  await chart.hover(6, 2);
  await expect.poll(() => chart.shown()).toEqual(['......', '#..###', '##.###']);
  await page.keyboard.press('Escape');
  await expect.poll(() => chart.shown()).toEqual(CORNER);
  await chart.click(4, 1);
  await chart.click(6, 3);
  await expect(announced(page)).toHaveText('Rectangle drawn.');
  await expect.poll(() => chart.shown()).toEqual(['...###', '#..#.#', '##.###']);
  await page.keyboard.press('Control+z');
  await page.getByRole('button', { name: 'Draw a line' }).click();
  await chart.click(6, 3);
  await chart.click(4, 1);
  await expect.poll(() => chart.shown()).toEqual(['.....#', '#...#.', '##.#..']);
  await page.getByRole('button', { name: 'Draw an ellipse' }).click();
  // The same cell twice is that cell alone.
  await chart.click(3, 3);
  await chart.click(3, 3);
  await expect.poll(() => chart.shown()).toEqual(['..#..#', '#...#.', '##.#..']);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in ${colorScheme}`, () => {
    test.use({ colorScheme });

    test('cells are moved by buttons, as the chart is shown', async ({ page, start }) => {
      await start('empty');
      const chart = await cornerChart(page);
      const group = page.getByRole('group', { name: 'Move by buttons' });
      const right = group.getByRole('button', { name: 'Move what is selected right, as it is shown' });
      await expect(right).toBeDisabled();
      await chart.drag([1, 1], [2, 2]);
      await right.click();
      await expect(chart.grid).toBeFocused();
      await group.getByRole('button', { name: 'Move what is selected up a row' }).click();
      await expect(announced(page)).toHaveText('Its lower left corner: row 2, stitch 2');
      await expect.poll(() => chart.shown()).toEqual(['.#....', '.##...', '......']);
      await expectAccessible(page);
      await group.getByRole('button', { name: 'Let the selection go' }).click();
      await expect.poll(() => chart.shown()).toEqual(CORNER);
      // From its other side, right is left.
      await chart.drag([1, 1], [2, 2]);
      await page.getByRole('combobox', { name: 'Shown as' }).selectOption('fabric, purl side');
      await right.click();
      await group.getByRole('button', { name: 'Place it' }).click();
      await expect(page.getByRole('button', { name: 'Undo move cells' })).toBeVisible();
      await page.getByRole('combobox', { name: 'Shown as' }).selectOption('chart');
      await expect(note(page)).toHaveText('Left off outside the chart: 1 stitch at the left. Undo brings them back.');
    });
  });
}
