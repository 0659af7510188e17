/** Selecting, moving, copying and pasting cells on the Motif bench. */
import type { Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { Chart } from './chart.ts';

/** A corner of three cells at the lower left of 6 × 3. */
async function cornerChart(page: Page): Promise<Chart> {
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('3');
  const chart = new Chart(page);
  await chart.drag([1, 2], [1, 1], [2, 1]);
  return chart;
}
const CORNER = ['......', '#.....', '##....'];

test('moves what is selected by mouse, as one step of undo', async ({ page, start }) => {
  await start('empty');
  const chart = await cornerChart(page);
  await page.getByRole('button', { name: 'Select cells' }).click();
  await chart.drag([1, 1], [2, 2]);
  await expect(announced(page)).toContainText('Selected: 2 stitches × 2 rows.');
  await chart.drag([1, 1], [3, 1], [4, 2]);
  const moved = ['...#..', '...##.', '......'];
  await expect.poll(() => chart.shown()).toEqual(moved);
  // Given up, all is as it was.
  await page.keyboard.press('Escape');
  await expect.poll(() => chart.shown()).toEqual(CORNER);

  await chart.drag([1, 1], [2, 2]);
  await chart.drag([1, 1], [4, 2]);
  // A press beside it lays it down.
  await chart.click(1, 3);
  await expect.poll(() => chart.shown()).toEqual(moved);
  await page.getByRole('button', { name: 'Undo move cells' }).click();
  await expect.poll(() => chart.shown()).toEqual(CORNER);
});

test('copies, mirrors, turns and lays a piece with the keyboard alone', async ({ page, start }) => {
  await start('empty');
  const chart = await cornerChart(page);
  await chart.grid.focus();
  await page.keyboard.press('s');
  await page.keyboard.press('Control+Home');
  for (const key of ['Space', 'ArrowRight', 'ArrowUp', 'Space']) await page.keyboard.press(key);
  await expect(announced(page)).toContainText('Selected: 2 stitches × 2 rows.');
  await page.keyboard.press('Control+c');
  await expect(announced(page)).toHaveText('Copied.');
  await page.keyboard.press('Control+v');
  await expect(announced(page)).toContainText('Arrow keys move it');
  await page.keyboard.press('Shift+H');
  for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowRight');
  await expect(announced(page)).toContainText('row 1, stitch 5');
  await expect.poll(() => chart.shown()).toEqual(['......', '#....#', '##..##']);
  await page.keyboard.press('Shift+T');
  await page.keyboard.press('Enter');
  await expect(announced(page)).toHaveText('Placed.');
  await expect.poll(() => chart.shown()).toEqual(['......', '#...#.', '##..##']);
  await page.keyboard.press('Control+z');
  await expect(announced(page)).toHaveText('Undone: paste.');
  await expect.poll(() => chart.shown()).toEqual(CORNER);

  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Shift+L');
  await page.keyboard.press('Control+x');
  await expect.poll(() => chart.shown()).toEqual(['......', '......', '......']);
  await page.keyboard.press('Control+v');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await expect.poll(() => chart.shown()).toEqual(['#.....', '##....', '......']);
});

test('moves what is selected with Shift and the arrow keys, and draws along with them where a tool does', async ({
  page,
  start,
}) => {
  await start('empty');
  const chart = await cornerChart(page);
  await page.getByRole('button', { name: 'Select cells' }).click();
  await chart.drag([1, 1], [2, 2]);
  await page.keyboard.press('Shift+ArrowRight');
  await expect(announced(page)).toHaveText('Its lower left corner: row 1, stitch 2');
  await page.keyboard.press('Shift+ArrowUp');
  await expect.poll(() => chart.shown()).toEqual(['.#....', '.##...', '......']);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Undo move cells' }).click();
  await expect.poll(() => chart.shown()).toEqual(CORNER);

  await chart.drag([1, 1], [2, 2]);
  await page.getByRole('button', { name: 'Draw', exact: true }).press('Enter');
  await chart.grid.focus();
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(() => chart.shown()).toEqual(['......', '#.....', '###...']);
});

test('is accessible with cells selected, light and dark', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await page.getByRole('button', { name: 'Select cells' }).click();
  await chart.drag([3, 3], [9, 12]);
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
});

test('clears and cuts what is selected or lifted, each in one step of undo', async ({ page, start }) => {
  await start('empty');
  const chart = await cornerChart(page);
  const bare = ['......', '......', '##....'];
  await page.getByRole('button', { name: 'Select cells' }).click();
  await chart.drag([1, 2], [1, 3]);
  await page.keyboard.press('Delete');
  await expect(announced(page)).toHaveText('Cleared.');
  await expect.poll(() => chart.shown()).toEqual(bare);
  await page.getByRole('button', { name: 'Undo erase' }).click();
  await expect.poll(() => chart.shown()).toEqual(CORNER);

  // Where ground alone is selected nothing is done, and nothing but that is said.
  await chart.drag([4, 1], [5, 1]);
  await page.keyboard.press('Delete');
  await expect(announced(page)).toHaveText('Nothing to change.');
  await expect.poll(() => chart.shown()).toEqual(CORNER);

  // Lifted and moved away: what was lifted goes, and where it stood is ground.
  for (const key of ['Backspace', 'Control+x']) {
    await chart.drag([1, 2], [1, 3]);
    await chart.drag([1, 2], [4, 2]);
    await expect.poll(() => chart.shown()).toEqual(['......', '...#..', '##....']);
    await page.keyboard.press(key);
    await expect.poll(() => chart.shown()).toEqual(bare);
    await page.keyboard.press('Control+z');
    await expect.poll(() => chart.shown()).toEqual(CORNER);
  }
  // Cut cells are pasted again; given up there, nothing is changed.
  await page.keyboard.press('Control+v');
  await page.keyboard.press('Delete');
  await expect(announced(page)).toHaveText('Cleared.');
  await expect.poll(() => chart.shown()).toEqual(CORNER);
});
