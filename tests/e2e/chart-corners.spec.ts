/** Corners of a chart on a photo: of two charts those of the one meant, and by hand put on the lines near them. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { encode } from 'jpeg-js';
import type { Picture } from '@shared/reading/index.ts';
import { photograph } from '../unit/reading/chart-photo.ts';
import { charts } from '../unit/reading/charts.ts';
import { blobs } from '../unit/reading/motifs.ts';
import { twoChartsOnAPage } from '../unit/reading/two-charts.ts';
import { expect, expectAccessible, test } from './app.ts';
import { FilePanel } from './file-panel.ts';

async function openPhoto(page: Page, home: string, { width, height, rgba }: Picture): Promise<void> {
  writeFileSync(join(home, 'charts.jpg'), encode({ width, height, data: rgba }, 85).data);
  await page.keyboard.press('Control+Shift+G');
  await new FilePanel(page).open('charts.jpg');
  await page.getByRole('button', { name: /^top left corner/ }).waitFor({ state: 'attached' });
  // A chart that is found moves the rings by itself.
  await expect(page.getByText(/Looking for the chart/)).toHaveCount(0, { timeout: 20_000 });
}

const take = (page: Page): ReturnType<Page['getByRole']> => page.getByRole('button', { name: 'Use as the motif' });

test('asks which of two charts on a page is meant, and reads the one that is chosen by keyboard', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openPhoto(page, home, twoChartsOnAPage());
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText('2 charts were found. Which one is meant?')).toBeVisible();
  await expect(take(page)).toBeDisabled();
  await expectAccessible(page);
  for (const [name, columns, rows] of [
    [/^\d: 26 columns, 20 rows$/, '26', '20'],
    [/^\d: 14 columns, 16 rows$/, '14', '16'],
  ] as const) {
    const choice = dialog.getByRole('button', { name });
    await choice.press('Enter');
    await expect(choice).toHaveAttribute('aria-pressed', 'true');
    await expect(dialog.getByRole('textbox', { name: 'Columns' })).toHaveValue(columns);
    await expect(dialog.getByRole('textbox', { name: 'Rows' })).toHaveValue(rows);
    await expect(take(page)).toBeEnabled();
  }
});

test('reads between the lines near corners that are set by hand, and says so', async ({ page, start, home }) => {
  const { style } = charts[0] as (typeof charts)[number];
  const camera = { width: 480, height: 420, roll: 5, tilt: 10, pan: -8, fill: 0.84 };
  await start();
  await openPhoto(page, home, photograph(blobs(16, 14, 2, 5), style, camera, { blur: 0.6, noise: 3 }).picture);
  const dialog = page.getByRole('dialog');
  await expect(take(page)).toBeEnabled();
  const said = dialog.getByText('It is read between the lines that were found near your corners.');
  await expect(said).toHaveCount(0);
  await dialog.getByText('Corners in numbers').click();
  // More than half a cell outwards: no longer the corners that were found.
  for (const [name, by] of [
    ['Top left, from the left', -16],
    ['Bottom right, from the left', 16],
  ] as const) {
    const field = dialog.getByRole('textbox', { name });
    await field.fill(String(Math.round(Number(await field.inputValue()) + by)));
  }
  await expect(dialog.getByText('The cells that the photo shows do not fit these corners')).toBeVisible();
  await dialog.getByRole('textbox', { name: 'Columns' }).fill('16');
  await dialog.getByRole('textbox', { name: 'Rows' }).fill('14');
  await dialog.getByLabel('Told apart by').selectOption('ink or holes');
  await expect(said).toBeVisible();
  await expect(take(page)).toBeEnabled();
  await expect(dialog.getByRole('grid', { name: /^What was read: 16 columns, 14 rows/ })).toBeVisible();
});
