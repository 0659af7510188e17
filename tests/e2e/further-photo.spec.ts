/** A chart that two photos show part by part: each is read, and they are put together. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { encode } from 'jpeg-js';
import { crop, gridToText, type Grid } from '@shared/grid/index.ts';
import { photograph } from '../unit/reading/chart-photo.ts';
import { charts } from '../unit/reading/charts.ts';
import { blobs } from '../unit/reading/motifs.ts';
import { announced, expect, expectAccessible, test } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';

/** Graph paper, inked in: it is knitted in the yarns of the project. */
const style = (charts[0] as (typeof charts)[number]).style;
const whole = blobs(16, 23, 2, 5);
const SHARED = 5;
const lower = crop(whole, 0, 0, 16, 14);
const upper = crop(whole, 0, 14 - SHARED, 16, 23 - 14 + SHARED);
const camera = { width: 480, height: 420, roll: 5, tilt: 10, pan: -8, fill: 0.84 };

function shot(grid: Grid): Uint8Array {
  const { picture } = photograph(grid, style, camera, { blur: 0.6, noise: 3 });
  return encode({ width: picture.width, height: picture.height, data: picture.rgba }, 85).data;
}
const photos = { 'lower.jpg': shot(lower), 'upper.jpg': shot(upper) };

const button = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });
const field = (page: Page, name: string): Locator =>
  page
    .getByRole('dialog')
    .locator('input, select')
    .and(page.getByLabel(name, { exact: true }));

/** The photo is open, and its chart was found. */
async function opened(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^top left corner/ }).waitFor({ state: 'attached' });
  await expect(page.getByText(/Looking for the chart/)).toHaveCount(0);
  await expect(page.getByText('A chart of 16 columns and 14 rows was found.')).toBeVisible();
}

/** Reads the lower photo, as far as that it could be taken. */
async function readLower(page: Page, home: string): Promise<void> {
  for (const [name, content] of Object.entries(photos)) writeFileSync(join(home, name), content);
  await page.keyboard.press('Control+Shift+G');
  await new FilePanel(page).open('lower.jpg');
  await opened(page);
  await field(page, 'Told apart by').selectOption('ink or holes');
  await expect(button(page, 'Use as the motif')).toBeEnabled();
}

/** Opens the other photo, and reads it. */
async function addUpper(page: Page): Promise<void> {
  await button(page, 'Add a further photo…').press('Enter');
  const panel = page.getByRole('dialog').last();
  await panel.getByRole('button', { name: 'upper.jpg', exact: true }).dblclick();
  await expect(page.getByRole('dialog', { name: 'Read a further photo of the chart' })).toBeVisible();
  await opened(page);
  // What was said of the first photo holds for the others.
  await expect(field(page, 'Told apart by')).toHaveValue('ink');
  await expect(button(page, 'See where they meet')).toBeEnabled();
}

test('reads on over a further photo: the rows on both are found and confirmed, and one undo takes all of it back', async ({
  page,
  start,
  home,
}) => {
  await start();
  await readLower(page, home);
  await addUpper(page);
  await button(page, 'See where they meet').press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Put the photos together' });
  await expect(dialog.getByText(/^The further photo goes on above, with 5 rows on both, /)).toBeVisible();
  await expect(dialog.getByRole('grid', { name: 'What was read: 16 columns, 23 rows' })).toBeVisible();
  await expect(button(page, 'Use as the motif')).toBeDisabled();
  await expectAccessible(page);

  await button(page, 'They meet like this').press('Enter');
  await expect(button(page, 'Use as the motif')).toBeEnabled();
  await button(page, 'Use as the motif').press('Enter');
  await expect(announced(page)).toContainText('Chart read: 16 stitches × 23 rows.');
  await expect.poll(() => new Chart(page).shown()).toEqual(gridToText(whole, '.#'));
  await button(page, 'Undo read chart').click();
  await expect(page.getByRole('grid')).toHaveAttribute('aria-colcount', '14');
});

test('sets by hand where photos meet, and goes back photo by photo to what was read before, in the dark', async ({
  page,
  start,
  home,
}) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await start();
  await readLower(page, home);
  await addUpper(page);
  await button(page, 'See where they meet').click();
  const dialog = page.getByRole('dialog', { name: 'Put the photos together' });
  await expect(field(page, 'Rows on both')).toHaveValue('5');
  await field(page, 'The further photo goes on').selectOption('below');
  await expect(field(page, 'Rows on both')).toHaveValue('5');
  await field(page, 'Rows on both').fill('2');
  await expect(
    dialog.getByText(/^The further photo goes on below, with 2 rows on both, \d+ cells of them differ/),
  ).toBeVisible();
  await expect(dialog.getByRole('grid', { name: 'What was read: 16 columns, 26 rows' })).toBeVisible();
  await expect(button(page, 'Use as the motif')).toBeEnabled();
  await expectAccessible(page);

  await button(page, 'Back to the photo').click();
  await expect(field(page, 'Rows')).toHaveValue('14');
  await expect(button(page, 'See where they meet')).toBeEnabled();
  await button(page, 'Leave this photo out').click();
  await expect(page.getByRole('dialog', { name: 'Read a chart from a photo' })).toBeVisible();
  await button(page, 'Use as the motif').click();
  await expect.poll(() => new Chart(page).shown()).toEqual(gridToText(lower, '.#'));
});

test('says in place why a further file cannot be read, and keeps what was read', async ({ page, start, home }) => {
  await start();
  writeFileSync(join(home, 'notes.txt.png'), 'no picture');
  await readLower(page, home);
  await button(page, 'Add a further photo…').click();
  await page.getByRole('dialog').last().getByRole('button', { name: 'notes.txt.png', exact: true }).dblclick();
  await expect(page.getByRole('dialog').getByRole('alert')).toContainText('notes.txt.png');
  await expect(button(page, 'Use as the motif')).toBeEnabled();
  await button(page, 'Add a further photo…').click();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(1);
  await expect(button(page, 'Use as the motif')).toBeEnabled();
});
