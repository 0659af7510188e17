/** The middle button pans and pastes nothing but text into text. On Linux its release pastes what is selected. */
import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { Chart, LIGHTHOUSE } from './chart.ts';

/** Counts the pastes that the browser asks for from now on. */
async function countPastes(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    Object.assign(window, { pastes: 0 });
    window.addEventListener('paste', () => (window as unknown as { pastes: number }).pastes++, true);
  });
  return () => page.evaluate(() => (window as unknown as { pastes: number }).pastes);
}

test('pans the chart and pastes no cells, however often', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await chart.grid.focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Control+c');
  await page.keyboard.press('Escape');
  const pastes = await countPastes(page);
  const before = await chart.at(1, 1);
  for (let times = 0; times < 3; times++) {
    const from = await chart.at(7, 10);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down({ button: 'middle' });
    await page.mouse.move(from.x + 20, from.y + 8, { steps: 4 });
    await page.mouse.up({ button: 'middle' });
  }
  const after = await chart.at(1, 1);
  expect([after.x - before.x, after.y - before.y].map(Math.round)).toEqual([60, 24]);
  expect(await pastes()).toBe(0);
  // What floats would be laid down by Enter.
  await page.keyboard.press('i');
  await page.keyboard.press('Enter');
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
});

test('pastes no cells where it is clicked beside the chart, and text into a field as ever', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await chart.grid.focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Control+c');
  const pastes = await countPastes(page);
  await page.getByRole('heading', { name: 'What it is' }).click({ button: 'middle' });
  await page.getByRole('heading', { level: 1 }).click({ button: 'middle' });
  expect(await pastes()).toBe(0);
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
  // Only where the platform has such a paste.
  await page.getByRole('textbox', { name: 'Stitches' }).click({ button: 'middle' });
  expect(await pastes()).toBe(process.platform === 'linux' ? 1 : 0);
});
