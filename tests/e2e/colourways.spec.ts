/** Yarns in several versions, and other colours up the rows of a pattern. */
import type { Locator, Page } from '@playwright/test';
import { expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';

async function openColourways(page: Page): Promise<Locator> {
  await page.keyboard.press('Control+Shift+H');
  const dialog = page.getByRole('dialog', { name: 'Colourways' });
  await expect(dialog).toBeVisible();
  return dialog;
}

test('compares two colourways by keyboard, knits the other, and takes it all back', async ({ page, start }) => {
  await start();
  const dialog = await openColourways(page);
  await dialog.getByRole('button', { name: 'Duplicate' }).press('Enter');
  // The name of the new one is ready to be typed over.
  await expect(dialog.getByLabel('Name', { exact: true }).nth(1)).toBeFocused();
  await page.keyboard.type('storm');
  const storm = dialog.getByRole('group', { name: 'storm' });
  const one = dialog.getByRole('group', { name: '1', exact: true });
  await storm.getByLabel('Name of chalk').fill('kelp');
  await storm.getByLabel('Colour of kelp').fill('#4a5a2a');
  await expect(one.getByLabel('Name of chalk')).toHaveValue('chalk');
  await expect(one.getByRole('radio')).toBeChecked();
  await storm.getByLabel('Name', { exact: true }).fill('1');
  await expect(dialog.getByRole('alert')).toContainText('Another colourway is called “1” already.');
  await storm.getByLabel('Name', { exact: true }).blur();
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);

  await storm.getByRole('radio').press('Space');
  await expect(storm.getByRole('radio')).toBeChecked();
  await expect(dialog.getByRole('status')).toHaveText('storm is knitted now.');
  await page.keyboard.press('Escape');
  // What is drawn, planned and printed is of the one that is knitted.
  await expect(page.getByRole('radio', { name: /kelp/ })).toBeVisible();
  await page.keyboard.press('3');
  await expect(page.getByRole('document').first()).toContainText('Colourway: storm.');
  await page.keyboard.press('1');
  await page.getByRole('button', { name: 'Undo choose colourway' }).click();
  await expect(page.getByRole('radio', { name: /chalk/ })).toBeVisible();

  const again = await openColourways(page);
  await again.getByRole('group', { name: 'storm' }).getByRole('button', { name: 'Remove', exact: true }).press('Enter');
  await expect(again.getByRole('group', { name: 'storm' })).toHaveCount(0);
  // The only one cannot go.
  await expect(again.getByRole('button', { name: 'Remove', exact: true })).toBeDisabled();
});

test('knits other colours up the rows of a band, which the rows and the sheet say', async ({ page, start }) => {
  await start();
  await page.keyboard.press('Shift+Y');
  await page.keyboard.press('2');
  await page.getByText('Rows, copies, balls').click();
  await page.getByText('Colours up the rows').click();
  await page.getByRole('button', { name: 'Change colours up the rows' }).press('Enter');
  await page.getByRole('button', { name: 'Add a stripe' }).press('Enter');
  const upper = page.getByRole('group', { name: 'Rows 7–12' });
  await upper.getByLabel('For chalk').selectOption({ label: 'yarn 3' });
  await expect(page.getByRole('img', { name: /One copy across and the first 18 rows/ })).toBeVisible();
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);

  // A stripe of no rows is none, and says what it takes.
  await upper.getByLabel('Rows', { exact: true }).fill('0');
  await expect(page.getByRole('alert').filter({ hasText: 'A whole number from 1' })).toBeVisible();
  await upper.getByLabel('Rows', { exact: true }).fill('20');
  await expect(page.getByText('The stripes have 26 rows, the pattern 18 rows')).toBeVisible();
  await page.getByRole('group', { name: 'Rows 7–26' }).getByLabel('Rows', { exact: true }).fill('6');

  // The band stands on rows 25 to 42, and the sheet says its colours by these.
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await expect(
    page
      .getByText(/Colours up the rows: rows 25–30 as drawn; rows 31–36 .* for chalk; the same again every 12 rows/)
      .first(),
  ).toBeAttached();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByRole('button', { name: 'Knit as drawn' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Change colours up the rows' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo change order of colours' }).click();
  await expect(page.getByRole('group', { name: 'Rows 7–12' })).toBeVisible();
});
