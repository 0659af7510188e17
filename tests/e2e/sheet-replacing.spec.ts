/** Files that the Sheet bench writes where some are already: none is replaced unasked. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, expectAccessible, intercept, test } from './app.ts';
import { FilePanel } from './file-panel.ts';

test('shows what a folder holds already, and asks before it replaces any of it', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('3');
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const [csv = ''] = readdirSync(join(home, 'print'));
  const before = readFileSync(join(home, 'print', csv), 'utf8');
  writeFileSync(join(home, 'print', csv), `${before}noted by hand\r\n`);

  const panel = new FilePanel(page);
  await page.getByRole('button', { name: 'Row list (CSV)' }).click();
  await panel.intoFolder('print');
  await expect(panel.dialog.getByRole('listitem')).toHaveText([csv]);
  await expectAccessible(page);
  await panel.chooseFolder();
  await panel.replace(`Replace "${csv}"?`, false);
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Export all four' })).toBeEnabled();
  expect(readFileSync(join(home, 'print', csv), 'utf8')).toContain('noted by hand');

  await panel.exportInto('Row list (CSV)', 'print');
  await panel.replace(/^Replace/, true);
  // What was said of the write before may still stand there; the file tells.
  await expect.poll(() => readFileSync(join(home, 'print', csv), 'utf8')).toBe(before);
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();

  await panel.exportInto('Chart drawing (SVG)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  await panel.exportInto('Export all four', 'print');
  await expect(page.getByRole('dialog', { name: 'Replace 2 files?' }).getByRole('listitem')).toHaveCount(2);
  await expectAccessible(page);
  await panel.replace('Replace 2 files?', false);
  expect(readdirSync(join(home, 'print'))).toHaveLength(2);
});

test('keeps both when told to: the new one of what is there has a number', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('3');
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const before = readFileSync(join(home, 'print', 'Skerry sleeve - rows.csv'), 'utf8');
  await new FilePanel(page).exportInto('Export all four', 'print');
  await page
    .getByRole('dialog', { name: /^Replace/ })
    .getByRole('button', { name: 'Keep both' })
    .click();
  await expect(page.getByText(/^4 files exported to/)).toBeVisible();
  const names = ['chart.png', 'chart.svg', 'placement.pdf', 'rows (2).csv', 'rows.csv'];
  expect(readdirSync(join(home, 'print')).sort()).toEqual(names.map((name) => `Skerry sleeve - ${name}`));
  expect(readFileSync(join(home, 'print', 'Skerry sleeve - rows.csv'), 'utf8')).toBe(before);
});

test('stays as it was when asked about replacing files and answered with Escape', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('3');
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await expect(page.getByRole('dialog', { name: /^Replace/ })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect(readdirSync(join(home, 'print'))).toHaveLength(1);
});

test('asks before it replaces files only when another question is answered', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  await panel.saveAs('sleeve');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await page.keyboard.press('3');
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const [csv = ''] = readdirSync(join(home, 'print'));

  // The export is slow, and somebody saves meanwhile.
  let letGo: () => void = () => undefined;
  const held = new Promise<void>((resolve) => (letGo = resolve));
  await intercept(page, '**/call/exports.write', async (route) => {
    await held;
    await route.continue();
  });
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await page.keyboard.press('Control+Shift+S');
  await panel.saveAs('sleeve');
  await expect(page.getByRole('dialog', { name: 'Replace "sleeve.walewright"?' })).toBeVisible();
  const answered = page.waitForResponse('**/call/exports.write');
  letGo();
  await answered;
  await panel.replace('Replace "sleeve.walewright"?', true);
  await panel.replace(`Replace "${csv}"?`, false);
  await expect(page.getByRole('dialog')).toHaveCount(0);
  // Saving goes on as before.
  await page.keyboard.press('Control+Shift+S');
  await expect(panel.dialog.getByLabel('Name')).toBeVisible();
});
