/** Parts that are loaded when they are first asked for, and cannot be had. */
import type { Page } from '@playwright/test';
import { expect, expectAccessible, intercept, test } from './app.ts';
import { Chart } from './chart.ts';
import { reading, toKnit } from './knit-bench.ts';

/** What the browser itself says of a file that it could not have. */
const NO_FILE = /Failed to load resource/;

/** Takes files of the built page away; returns a function that gives them back. */
async function takeAway(page: Page, files: RegExp): Promise<() => Promise<void>> {
  await intercept(page, files, (route) => route.abort());
  return () => page.unroute(files);
}

const bench = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

test('a bench that cannot be had says so, and comes when it is tried again', async ({ page, start, forgiven }) => {
  forgiven.push(NO_FILE);
  await start();
  await new Chart(page).click(1, 18);
  const giveBack = await takeAway(page, /\/assets\/KnitBench-[^/]*\.js/);
  await bench(page, 'Knit').click();
  const alert = page.getByRole('alert');
  await expect(alert).toHaveText('The Knit bench could not be loaded. Your work is not touched by it.');
  await expectAccessible(page);
  const again = page.getByRole('button', { name: 'Try again' });
  await again.click();
  await expect(alert).toHaveText(
    'The Knit bench could not be loaded. Save your work, then close the program and start it again.',
  );
  await expect(again).toBeFocused();
  // The window goes on working, and the work is there.
  await expect(page.getByRole('button', { name: 'Undo draw' })).toBeEnabled();

  await giveBack();
  await page.keyboard.press('Enter');
  await expect(reading(page)).toBeVisible();
  await expect(alert).toHaveCount(0);
  // The keyboard is in what came.
  await expect(page.locator('.bench :focus')).toHaveCount(1);
  await bench(page, 'Motif').click();
  await toKnit(page);
});

test('a dialog that cannot be had says so, can be left, and comes when it is tried again', async ({
  page,
  start,
  forgiven,
}) => {
  forgiven.push(NO_FILE);
  await start();
  const giveBack = await takeAway(page, /\/assets\/LetteringDialog-[^/]*\.js/);
  await new Chart(page).grid.focus();
  await page.keyboard.press('a');
  const missing = page.getByRole('dialog', { name: 'Lettering' });
  await expect(missing.getByRole('alert')).toContainText('Lettering could not be loaded.');
  await page.keyboard.press('Escape');
  await expect(missing).toBeHidden();
  await page.keyboard.press('a');
  await expect(missing.getByRole('alert')).toContainText('Lettering could not be loaded.');
  await giveBack();
  await missing.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('dialog', { name: 'Lettering' }).getByRole('textbox', { name: 'Text' })).toBeFocused();
});

test('a part of a bench that cannot be had leaves the rest of the bench usable', async ({ page, start, forgiven }) => {
  forgiven.push(NO_FILE);
  await start();
  await bench(page, 'Piece').click();
  const giveBack = await takeAway(page, /\/assets\/ClosedStage-[^/]*\.js/);
  await page.getByRole('button', { name: 'Show it seamed' }).click();
  await expect(page.getByRole('alert')).toContainText('The seamed piece could not be loaded.');
  await expect(page.getByRole('region', { name: 'What it is' })).toBeVisible();
  await giveBack();
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(page.getByRole('slider', { name: /seamed/ })).toBeVisible();
});
