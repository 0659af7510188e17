/** An all-over that starts above the hem, in two sizes whose hems are not alike. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  addSize,
  afterChange,
  changeSize,
  projectAt,
  projectFromText,
  projectToText,
  renameSize,
} from '@shared/project/index.ts';
import { settled } from '../written-projects.ts';
import { announced, expect, expectAccessible, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { NAME } from './piece-bench.ts';
import { twelveStitchMotif } from './projects.ts';

/** M of 60 rows with a hem of 20, L of 70 with one of 26; nothing is placed yet. */
function twoHems(): string {
  const plain = settled(twelveStitchMotif([1], { piece: { hemRows: 20 } }), { patterns: [] });
  const named = afterChange(plain, renameSize(plain, 0, 'M'));
  const two = afterChange(named, addSize(named, 1, 'L', 'size-l'));
  const shape = { kind: 'rectangle', stitches: 120, rows: 70 } as const;
  return projectToText(afterChange(two, changeSize(two, 1, { hemRows: 26, shape })).whole);
}

test('starts above the hem of each size, by keyboard, and is kept so', async ({ page, start, home }) => {
  writeFileSync(join(home, NAME), twoHems());
  await start();
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(NAME, 'Twelve');
  await page.keyboard.press('2');
  const chart = page.getByRole('grid');
  await chart.focus();

  // A new one starts on the second row above the hem, the first that can be in pattern.
  await page.keyboard.press('Shift+F');
  await expect(announced(page)).toHaveText('The all-over takes rows 22–60.');
  const panel = page.getByRole('region', { name: 'All-over pattern', exact: true });
  await panel.getByRole('button', { name: 'Rows, edges, how it lies' }).press('Enter');
  const starts = panel.getByLabel('All-over starts');
  const chosen = starts.locator('option:checked');
  await expect(chosen).toHaveText('above the hem');

  // Said by a row, it lies on that row in both, in the hem of L.
  await starts.focus();
  await page.keyboard.press('ArrowDown');
  await expect(chosen).toHaveText('on a given row');
  await expect(panel.getByLabel('First row of the all-over')).toHaveValue('22');
  await chart.focus();
  await page.keyboard.press(']');
  await expect(panel).toContainText('All-over 1, rows 22–70');
  await page.keyboard.press('[');
  await expect(panel).toContainText('All-over 1, rows 22–60');

  await starts.focus();
  await page.keyboard.press('ArrowUp');
  await expect(chosen).toHaveText('above the hem');
  const below = panel.getByRole('textbox', { name: 'Plain rows below the all-over', exact: true });
  await expect(below).toHaveValue('1');
  await below.focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await expect(panel).toContainText('All-over 1, rows 24–60');
  await chart.focus();
  await page.keyboard.press(']');
  await expect(panel).toContainText('All-over 1, rows 30–70');
  await expectAccessible(page);

  // A visit to a field is a step, and so is a choice.
  await page.keyboard.press('Control+Z');
  await expect(panel).toContainText('All-over 1, rows 28–70');
  await page.keyboard.press('Control+Z');
  await expect(panel).toContainText('All-over 1, rows 22–70');
  await page.keyboard.press('Control+Shift+Z');
  await page.keyboard.press('Control+Shift+Z');
  await expect(panel).toContainText('All-over 1, rows 30–70');

  await panel.getByLabel('All-over ends').selectOption('after so many rows');
  await panel.getByLabel('Position of the all-over').selectOption('centred');
  await panel.getByLabel('Centred in').selectOption('main part');
  await panel.getByLabel('Rows of the all-over').fill('30');
  // Rows 27–70 less 30 are 14, half of them below.
  await expect(panel).toContainText('All-over 1, rows 34–63');

  await page.keyboard.press('Control+S');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  const saved = projectAt(projectFromText(readFileSync(join(home, NAME), 'utf8')));
  expect(saved.patterns).toMatchObject([
    { position: { kind: 'so-high', height: 30, at: { kind: 'centred', section: 'body' } } },
  ]);
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(NAME, 'Twelve');
  // Of M rows 21–60 less 30 are 10, half of them below.
  await expect(panel).toContainText('All-over 1, rows 26–55');
});
