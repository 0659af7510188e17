/** The window on the pullover: what is looked at there, and what is typed. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { GARMENT, garmentText, type GarmentSoFar } from './garment.ts';

/** Its file in the home folder. */
export const FILE = `${GARMENT}.walewright`;

export const strip = (page: Page) => page.getByRole('toolbar', { name: 'Pieces' });
export const piece = (page: Page) => strip(page).locator('[aria-current]');
export const whatItIs = (page: Page) => page.getByRole('region', { name: 'What it is' });
export const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
export const redo = (page: Page) => page.getByRole('button', { name: /^Redo/ });
export const saved = (page: Page) => page.getByText('saved', { exact: true });
export const heading = (page: Page) => page.getByRole('banner').getByRole('heading', { level: 1 });
export const drawing = (page: Page) => page.getByRole('heading', { name: /, (on the needles|as worn)$/ });

export async function fill(page: Page, label: string, value: number | string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(String(value));
  await field.blur();
}

/** Presses a key while the drawing has the focus. */
export async function press(page: Page, key: string): Promise<void> {
  await page.getByRole('grid').focus();
  await page.keyboard.press(key);
}

export async function callProject(page: Page, name: string): Promise<void> {
  await page.keyboard.press('F2');
  await expect(page.getByLabel('Name of the project')).toBeFocused();
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await expect(heading(page)).toHaveText(name);
}

/** Opens the pullover, as far as it is made, from a file on the Piece bench. */
export async function openGarment(page: Page, home: string, soFar: GarmentSoFar = {}): Promise<void> {
  writeFileSync(join(home, FILE), garmentText(soFar));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(FILE, GARMENT);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(drawing(page)).toHaveText(/^Front,.* on the needles$/);
}
