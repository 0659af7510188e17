/** How a knitter goes about on the Knit bench: what several files of tests do there. */
import type { Locator, Page } from '@playwright/test';
import { expect } from './app.ts';

/** What the row counter reads. */
export const reading = (page: Page): Locator =>
  page.getByRole('region', { name: 'The counter reads' }).locator('.reading');

/** The button that ends the row. */
export const done = (page: Page): Locator => page.getByRole('button', { name: 'Row done' });

export async function toKnit(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Knit', exact: true }).click();
  await expect(reading(page)).toBeVisible();
}

/** Counts rows by the key of a foot pedal until the counter reads so many. */
export async function knitTo(page: Page, rows: number): Promise<void> {
  for (let at = Number(await reading(page).textContent()); at < rows; at++) {
    await page.keyboard.press('PageDown');
    await expect(reading(page)).toHaveText(String(at + 1));
  }
}

/** Says another reading in its dialog. */
export async function say(page: Page, to: number, button: string): Promise<void> {
  await page.getByRole('button', { name: 'Another reading, or ripped back' }).click();
  const dialog = page.getByRole('dialog', { name: 'Another reading' });
  await dialog.getByLabel('Reading').fill(String(to));
  await dialog.getByRole('button', { name: button }).click();
  await expect(dialog).toHaveCount(0);
}
