/** Shortcuts of a single key: where they act, and that they can be switched off (WCAG 2.2, 2.1.4). */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, announced, test } from './app.ts';
import { Chart } from './chart.ts';

test('act in the chart, and nowhere else', async ({ page, start }) => {
  await start();
  const { grid } = new Chart(page);
  const eraser = page.getByRole('button', { name: 'Erase', exact: true });
  const draw = page.getByRole('button', { name: 'Draw', exact: true });
  // The window opens with the keyboard in the chart.
  await expect(grid).toBeFocused();
  await page.keyboard.press('e');
  await expect(eraser).toHaveAttribute('aria-pressed', 'true');
  await grid.press('d');
  await expect(draw).toHaveAttribute('aria-pressed', 'true');

  // A letter, a letter with Shift, a digit and a sign, in a switch, a button, a choice, and on nothing.
  const stitches = page.getByRole('textbox', { name: 'Stitches' });
  const before = await stitches.inputValue();
  const size = await new Chart(page).cellSize();
  const elsewhere = [
    page.getByRole('switch').first(),
    page.getByRole('button', { name: 'Commands' }),
    page.getByRole('radio').first(),
  ];
  for (const place of elsewhere) {
    await place.focus();
    for (const key of ['e', 'Shift+C', '2', '+']) await page.keyboard.press(key);
    await expect(place).toBeFocused();
  }
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  for (const key of ['e', 'Shift+C', '2', '+']) await page.keyboard.press(key);
  await expect(draw).toHaveAttribute('aria-pressed', 'true');
  await expect(stitches).toHaveValue(before);
  await expect(page.getByRole('button', { name: 'Motif', exact: true })).toHaveAttribute('aria-current', 'page');
  expect(await new Chart(page).cellSize()).toEqual(size);
});

test('act in the piece, flat and closed, and nowhere else', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const floats = page.getByRole('button', { name: 'Show floats' });
  await expect(page.getByRole('grid')).toBeFocused();
  await page.keyboard.press('f');
  await expect(floats).toHaveAttribute('aria-pressed', 'false');
  await floats.focus();
  for (const key of ['f', 'c', '.', 'Shift+F', '3']) await page.keyboard.press(key);
  await expect(floats).toHaveAttribute('aria-pressed', 'false');
  await expect(page.getByRole('grid')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

  await page.getByRole('grid').press('c');
  await expect(page.getByRole('slider')).toBeFocused();
  await page.keyboard.press('c');
  await expect(page.getByRole('grid')).toBeFocused();
});

test('leave Ctrl and a key to act anywhere', async ({ page, start }) => {
  await start();
  await page.getByRole('switch').first().focus();
  await page.keyboard.press('Control+K');
  await expect(page.getByRole('dialog', { name: 'Commands' })).toBeVisible();
});

test('are switched off by command and by hand, stay off in the next run, and are then shown nowhere', async ({
  page,
  start,
}) => {
  await start();
  const { grid } = new Chart(page);
  const eraser = page.getByRole('button', { name: 'Erase', exact: true });
  const single = page.getByRole('switch', { name: 'Shortcuts of a single key' });
  await expect(eraser).toHaveAttribute('title', 'Erase (E)');

  const kept = page.waitForResponse((response) => response.url().includes('settings.keep'));
  await page.keyboard.press('Control+Shift+K');
  await kept;
  await expect(announced(page)).toHaveText('Shortcuts of a single key: off');
  await expect(eraser).toHaveAttribute('title', 'Erase');
  await expect(eraser).not.toHaveAttribute('aria-keyshortcuts');
  await grid.press('e');
  await grid.press('2');
  await expect(eraser).toHaveAttribute('aria-pressed', 'false');
  // Keys that are no characters still do what they did.
  await grid.press('ArrowRight');
  await expect(grid.getByRole('gridcell')).toHaveAccessibleName(/stitch 2/);

  await start();
  await grid.press('e');
  await expect(eraser).toHaveAttribute('aria-pressed', 'false');
  await page.getByRole('button', { name: 'Commands' }).click();
  await expect(page.getByRole('option', { name: 'Erase', exact: true }).locator('kbd')).toHaveCount(0);
  await expect(single).not.toBeChecked();
  await single.check();
  await expect(page.getByRole('option', { name: /^Erase/ }).locator('kbd')).toHaveText('E');
  await page.keyboard.press('Escape');
  await expect(grid).toBeFocused();
  await page.keyboard.press('e');
  await expect(eraser).toHaveAttribute('aria-pressed', 'true');
});

test('say so where the setting cannot be kept, and hold in this window', async ({ page, start, folder }) => {
  await start();
  // A folder stands where the settings would.
  mkdirSync(join(folder, 'data', 'settings.json'));
  await page.keyboard.press('Control+Shift+K');
  await expect(page.getByRole('alert')).toContainText('settings.json');
  await expect(page.getByRole('button', { name: 'Erase', exact: true })).toHaveAttribute('title', 'Erase');
});

test('that turn a switch say so', async ({ page, start }) => {
  await start();
  const { grid } = new Chart(page);
  for (const [key, sentence] of [
    ['Shift+R', 'Fill shapes: on'],
    ['Shift+R', 'Fill shapes: off'],
    ['Shift+F', 'Fill everywhere: on'],
    ['t', 'Let all copies follow: on'],
    ['t', 'Let all copies follow: off'],
    ['n', 'Show neighbouring copies: off'],
    ['q', 'Show cells square: on'],
    ['Control+Shift+D', 'Dark appearance'],
  ] as const) {
    await grid.press(key);
    await expect(announced(page)).toHaveText(sentence);
  }
  await grid.press('2');
  await expect(announced(page)).toHaveText('Piece');
  for (const [key, sentence] of [
    ['f', 'Show floats: off'],
    ['f', 'Show floats: on'],
    ['w', 'Show wraps: off'],
    ['v', 'Show the fabric as stitches: on'],
  ] as const) {
    await grid.press(key);
    await expect(announced(page)).toHaveText(sentence);
  }
});
