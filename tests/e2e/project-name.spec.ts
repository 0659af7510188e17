/** What the project is called: in the bar, changed there or by a command. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { projectFromText } from '@shared/project/index.ts';
import { createOffered, expect, expectAccessible, test } from './app.ts';
import { FilePanel } from './file-panel.ts';

const heading = (page: Page): Locator => page.getByRole('banner').getByRole('heading', { level: 1 });
const field = (page: Page): Locator => page.getByLabel('Name of the project');

test('is typed over in the bar, and is one step of undo', async ({ page, start }) => {
  await start();
  await heading(page).getByRole('button', { name: 'Skerry sleeve' }).click();
  await expect(field(page)).toBeFocused();
  await expectAccessible(page);
  await page.keyboard.type('Harbour cuff');
  await page.keyboard.press('Enter');
  await expect(heading(page)).toHaveText('Harbour cuff');
  await expect(page).toHaveTitle(/^Harbour cuff · /);
  await page.keyboard.press('Control+Z');
  await expect(heading(page)).toHaveText('Skerry sleeve');
});

test('keeps its name when typing is given up with Escape, or when nothing is left of it', async ({ page, start }) => {
  await start();
  await page.keyboard.press('F2');
  await page.keyboard.type('Harbour cuff');
  await page.keyboard.press('Escape');
  await expect(heading(page)).toHaveText('Skerry sleeve');
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();

  await page.keyboard.press('F2');
  await expect(field(page)).toBeFocused();
  await page.keyboard.press('Delete');
  await expect(page.getByRole('alert')).toHaveText('A name of 1 to 120 letters.');
  await expectAccessible(page);
  await page.keyboard.press('Enter');
  await expect(heading(page)).toHaveText('Skerry sleeve');

  // Deleted letter by letter it was called by fewer and fewer of them.
  await page.keyboard.press('F2');
  await expect(field(page)).toBeFocused();
  await page.keyboard.press('End');
  for (const _ of 'Skerry sleeve') await page.keyboard.press('Backspace');
  await expect(page.getByRole('alert')).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(heading(page)).toHaveText('Skerry sleeve');
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
});

test('is what a save writes that comes while it is typed', async ({ page, start, home }) => {
  await start();
  await page.keyboard.press('F2');
  await page.keyboard.type('Harbour cuff');
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  expect(projectFromText(readFileSync(join(home, 'Harbour cuff.walewright'), 'utf8')).name).toBe('Harbour cuff');
});

test('is that of its first file where nobody gave it one', async ({ page, start, home }) => {
  await start();
  await page.keyboard.press('Control+Shift+N');
  await createOffered(page);
  await expect(heading(page)).toHaveText('Untitled');
  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  await panel.dialog.getByLabel('Name').fill('Harbour cuff');
  await panel.saveHere();
  await expect(heading(page)).toHaveText('Harbour cuff');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  expect(projectFromText(readFileSync(join(home, 'Harbour cuff.walewright'), 'utf8')).name).toBe('Harbour cuff');
});
