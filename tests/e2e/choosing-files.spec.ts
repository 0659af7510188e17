/** The program's own panel for files: where it opens, what it offers, and the name when saving. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { pngOf } from '../unit/picture/pictures.ts';
import { expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

const folderOf = (page: Page): Locator => page.getByRole('dialog').getByLabel('Folder', { exact: true });
const selectionIn = (field: Locator): Promise<string> =>
  field.evaluate((input: HTMLInputElement) => input.value.slice(input.selectionStart ?? 0, input.selectionEnd ?? 0));

/** A folder with one of each: a project, a picture, and what was exported. */
function fill(folder: string): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'sleeve.walewright'), textOf({ ...twelveStitchMotif([1]), name: 'sleeve' }));
  writeFileSync(join(folder, 'moon.png'), pngOf([['#202020', '#f0f0f0']]));
  writeFileSync(join(folder, 'sheet.pdf'), '%PDF-1.7');
}

test('offers what can be opened, and says of the rest why it cannot be', async ({ page, start, home }) => {
  fill(home);
  await start();
  await page.keyboard.press('Control+O');
  const dialog = page.getByRole('dialog', { name: 'Open a project or a picture' });
  const choices = dialog.getByRole('listitem').getByRole('button');
  await expect(choices.filter({ hasText: /\./ })).toHaveText(['moon.png', 'sleeve.walewright']);
  await expect(dialog.getByRole('listitem').filter({ hasText: 'sheet.pdf' })).toHaveText(
    'sheet.pdfnot a project or a picture',
  );
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();

  // For a picture to trace, by the same panel: pictures alone.
  await page.getByRole('grid').focus();
  await page.keyboard.press('Shift+Q');
  const pictures = page.getByRole('dialog', { name: 'Open a picture' });
  await expect(pictures.getByRole('listitem').getByRole('button').filter({ hasText: /\./ })).toHaveText(['moon.png']);
  await expect(pictures.getByRole('listitem').filter({ hasText: 'sleeve' })).toHaveText(
    'sleeve.walewrightnot a picture',
  );
  await page.keyboard.press('Escape');

  await page.keyboard.press('Control+Shift+S');
  const saving = page.getByRole('dialog', { name: 'Save the project' });
  await expect(saving.getByRole('listitem').filter({ hasText: 'moon' })).toHaveText('moon.pngnot a project');
  await expect(saving.getByRole('button', { name: 'sleeve.walewright' })).toBeVisible();
});

test('saving begins with the name, without its ending selected, and the next panel opens in that folder', async ({
  page,
  start,
  home,
}) => {
  fill(join(home, 'knitting'));
  await start();
  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  const name = panel.dialog.getByLabel('Name');
  await expect(name).toBeFocused();
  await expect(name).toHaveValue('Skerry sleeve.walewright');
  expect(await selectionIn(name)).toBe('Skerry sleeve');
  await page.keyboard.type('cuff');
  await expect(name).toHaveValue('cuff.walewright');
  await panel.intoFolder('knitting');
  await panel.saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();

  // Here, and after the page has come anew.
  for (const isAnew of [false, true]) {
    if (isAnew) await page.reload();
    await expect(page.getByRole('button', { name: 'Commands' })).toBeVisible();
    await page.keyboard.press('Control+O');
    await expect(folderOf(page)).toHaveValue(join(home, 'knitting'));
    await page.keyboard.press('Escape');
    await expect(panel.dialog).toBeHidden();
  }
  // A folder that is gone is no place to begin.
  rmSync(join(home, 'knitting'), { recursive: true });
  await page.keyboard.press('Control+O');
  await expect(folderOf(page)).toHaveValue(home);
  await expect(panel.dialog.getByRole('alert')).toHaveCount(0);
});
