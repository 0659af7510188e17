/** A chart read out of a photo, from the file to the last cell. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { encode } from 'jpeg-js';
import { gridToText } from '@shared/grid/index.ts';
import { photograph } from '../unit/reading/chart-photo.ts';
import { charts } from '../unit/reading/charts.ts';
import { blobs } from '../unit/reading/motifs.ts';
import { announced, expect, expectAccessible, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';

/** Graph paper, inked in: it is knitted in the yarns of the project. */
const style = (charts[0] as (typeof charts)[number]).style;
const grid = blobs(16, 14, 2, 5);
const camera = { width: 480, height: 420, roll: 5, tilt: 10, pan: -8, fill: 0.84 };
const { picture, corners } = photograph(grid, style, camera, { blur: 0.6, noise: 3 });
const photo = encode({ width: picture.width, height: picture.height, data: picture.rgba }, 85).data;
const drawn = gridToText(grid, '.#');

const NAMES = ['top left', 'top right', 'bottom right', 'bottom left'] as const;
const ring = (page: Page, name: string): ReturnType<Page['getByRole']> =>
  page.getByRole('button', { name: new RegExp(`^${name} corner`) });

/** Where a ring says that it is, in pixels of the photo. */
async function at(page: Page, name: string): Promise<{ x: number; y: number }> {
  const [x, y] = /at (\d+), (\d+)/.exec((await ring(page, name).getAttribute('aria-label')) ?? '')?.slice(1) ?? [];
  return { x: Number(x), y: Number(y) };
}

/** The middle of what the keyboard has of a ring, which is that of the ring. */
async function middleOf(handle: ReturnType<Page['getByRole']>): Promise<{ x: number; y: number }> {
  const { x, y, width, height } = await restingBox(handle);
  return { x: x + width / 2, y: y + height / 2 };
}

const distance = (a: { x: number; y: number }, b: { x: number; y: number }): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Where the photo's upper left corner is on the screen, and how many pixels there one of its own takes: by two rings. */
async function photoOnScreen(page: Page): Promise<{ x: number; y: number; scale: number }> {
  const [from, to] = [await middleOf(ring(page, 'top left')), await middleOf(ring(page, 'bottom right'))];
  const [first, last] = [await at(page, 'top left'), await at(page, 'bottom right')];
  const scale = (to.x - from.x) / (last.x - first.x);
  return { x: from.x - first.x * scale, y: from.y - first.y * scale, scale };
}

async function openPhoto(page: Page, home: string, content = photo): Promise<void> {
  writeFileSync(join(home, 'graph paper.jpg'), content);
  await page.keyboard.press('Control+Shift+G');
  await new FilePanel(page).open('graph paper.jpg');
  await ring(page, 'top left').waitFor({ state: 'attached' });
  // A chart that is found moves the rings by itself.
  await expect(page.getByText(/Looking for the chart/)).toHaveCount(0);
}

const take = (page: Page): ReturnType<Page['getByRole']> => page.getByRole('button', { name: 'Use as the motif' });

test('reads a photo by mouse: the corners are dragged, and every cell comes back', async ({ page, start, home }) => {
  await start();
  await openPhoto(page, home);
  const shown = await photoOnScreen(page);
  for (const [index, name] of NAMES.entries()) {
    const corner = corners[index] ?? { x: 0, y: 0 };
    const from = await middleOf(ring(page, name));
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(shown.x + corner.x * shown.scale, shown.y + corner.y * shown.scale, { steps: 3 });
    await page.mouse.up();
    // Konva draws where it is, and the button that the keyboard has of it stands there.
    await expect.poll(async () => distance(await at(page, name), corner)).toBeLessThan(3);
  }
  await expect(page.getByRole('textbox', { name: 'Columns' })).toHaveValue('16');
  await expect(page.getByRole('dialog').getByRole('textbox', { name: 'Rows' })).toHaveValue('14');
  await page.getByLabel('Told apart by').selectOption('ink or holes');
  await expect(take(page)).toBeEnabled();
  await expectAccessible(page);

  // A cell that was settled is not given up without a word.
  const cells = page.getByRole('grid', { name: /^What was read/ });
  await cells.click({ position: { x: 40, y: 40 } });
  await page.keyboard.press('2');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('alert')).toContainText('1 cell that you checked would be lost');
  await page.keyboard.press('Escape');
  await cells.click({ position: { x: 40, y: 40 } });
  await page.keyboard.press('1');
  await take(page).click();
  await expect(announced(page)).toHaveText('Chart read: 16 stitches × 14 rows.');
  await expect.poll(() => new Chart(page).shown()).toEqual(drawn);
  await page.getByRole('button', { name: 'Undo read chart' }).click();
  await expect(page.getByRole('grid')).toHaveAttribute('aria-colcount', '14');
});

test('reads a photo by keyboard alone, in the dark; corners that cross are told in place', async ({
  page,
  start,
  home,
}) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await start();
  await openPhoto(page, home);
  // One ring by the arrow keys, the other corners by numbers.
  const to = corners[0];
  await ring(page, 'top left').focus();
  const from = await at(page, 'top left');
  for (const [way, back, by] of [
    ['ArrowRight', 'ArrowLeft', Math.round(to.x) - from.x],
    ['ArrowDown', 'ArrowUp', Math.round(to.y) - from.y],
  ] as const) {
    const key = by > 0 ? way : back;
    for (let tens = 0; tens < Math.floor(Math.abs(by) / 10); tens++) await page.keyboard.press(`Shift+${key}`);
    for (let ones = 0; ones < Math.abs(by) % 10; ones++) await page.keyboard.press(key);
  }
  expect(await at(page, 'top left')).toEqual({ x: Math.round(to.x), y: Math.round(to.y) });
  await page.getByText('Corners in numbers').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'Top right, from the left' }).focus();
  for (const { x, y } of corners.slice(1)) {
    for (const number of [x, y]) {
      await page.keyboard.press('Control+a');
      await page.keyboard.type(String(Math.round(number)));
      await page.keyboard.press('Tab');
    }
  }
  await expect(page.getByRole('textbox', { name: 'Columns' })).toHaveValue('16');
  await page.getByLabel('Told apart by').focus();
  await page.keyboard.press('i');
  await expect(page.getByLabel('The figure is')).toBeVisible();
  await expect(take(page)).toBeEnabled();

  // The corner at the top left goes past the one at the right, and back.
  const left = page.getByRole('textbox', { name: 'Top left, from the left' });
  const placed = await left.inputValue();
  await left.selectText();
  await page.keyboard.type('470');
  await expect(page.getByRole('alert')).toContainText('cannot be the corners of a chart');
  await expect(take(page)).toBeDisabled();
  await expectAccessible(page);
  await left.selectText();
  await page.keyboard.type(placed);
  await expect(page.getByRole('alert')).toHaveCount(0);

  await expect(take(page)).toBeEnabled();
  await take(page).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect.poll(() => new Chart(page).shown()).toEqual(drawn);
});

test('sets the corners by four clicks one after another, which Escape leaves, and by numbers', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openPhoto(page, home);
  const dialog = page.getByRole('dialog');
  const shown = await photoOnScreen(page);
  const before = await at(page, 'top left');
  const click = async (index: number): Promise<void> => {
    const corner = corners[index] ?? { x: 0, y: 0 };
    await page.mouse.click(shown.x + corner.x * shown.scale, shown.y + corner.y * shown.scale);
  };
  const next = (name: string) => dialog.getByText(`Click the ${name} corner of the chart.`).first();

  await dialog.getByRole('button', { name: 'Click the four corners' }).click();
  await expect(next('top left')).toBeVisible();
  await click(0);
  await expect(next('top right')).toBeVisible();
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeVisible();
  expect(await at(page, 'top left')).toEqual(before);

  await dialog.getByRole('button', { name: 'Click the four corners' }).click();
  for (const [index, name] of NAMES.entries()) {
    await expect(next(name)).toBeVisible();
    await click(index);
  }
  await expect(dialog.getByText('The four corners are set.')).toBeAttached();
  for (const [index, name] of NAMES.entries())
    expect(distance(await at(page, name), corners[index] ?? { x: 0, y: 0 })).toBeLessThan(3);
  await expect(dialog.getByRole('textbox', { name: 'Columns' })).toHaveValue('16');

  await dialog.getByText('Corners in numbers').click();
  const left = dialog.getByRole('textbox', { name: 'Top left, from the left' });
  await left.fill('9999');
  await expect(dialog.getByRole('alert')).toContainText('from 0 to 480');
  await left.fill('60');
  await left.press('ArrowUp');
  await left.press('Shift+ArrowUp');
  await expect.poll(async () => (await at(page, 'top left')).x).toBe(71);
});

test('finds the chart by itself, and reads it turned', async ({ page, start, home }) => {
  await start();
  await openPhoto(page, home);
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText('A chart of 16 columns and 14 rows was found.')).toBeVisible();
  for (const [index, name] of NAMES.entries())
    expect(distance(await at(page, name), corners[index] ?? { x: 0, y: 0 })).toBeLessThan(6);
  await expect(dialog.getByRole('textbox', { name: 'Columns' })).toHaveValue('16');
  await expect(dialog.getByRole('textbox', { name: 'Rows' })).toHaveValue('14');
  await expect(take(page)).toBeEnabled();
  await expectAccessible(page);
  await dialog.getByRole('button', { name: 'Turn it clockwise' }).click();
  await expect(dialog.getByRole('textbox', { name: 'Columns' })).toHaveValue('14');
  await expect(dialog.getByRole('textbox', { name: 'Rows' })).toHaveValue('16');
  const [, , , bottomLeft] = corners;
  expect(distance(await at(page, 'top left'), bottomLeft)).toBeLessThan(6);
});

test('has a chart that is not sure confirmed before it is taken', async ({ page, start, home }) => {
  await start();
  const bare = charts.find(({ name }) => name === 'cells without lines') as (typeof charts)[number];
  const shot = photograph(grid, bare.style, camera, { blur: 0.6, noise: 3 }).picture;
  const jpg = encode({ width: shot.width, height: shot.height, data: shot.rgba }, 85).data;
  await openPhoto(page, home, jpg);
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText(/^A chart of perhaps .* It has no lines/)).toBeVisible();
  await expect(dialog.getByRole('grid')).toBeVisible();
  await expect(dialog.getByText('Look at the corners and say that they are right, or set them.')).toBeVisible();
  await expect(take(page)).toBeDisabled();
  // Of where the chart ends nothing is sure yet.
  await expect(dialog.getByText('No cell between these corners is doubtful.')).toBeVisible();
  await dialog.getByRole('button', { name: 'The corners are right' }).press('Enter');
  await expect(dialog.getByText('No cell is doubtful.')).toBeVisible();
  await expect(take(page)).toBeEnabled();
  await expect(dialog.getByRole('button', { name: 'The corners are right' })).toHaveCount(0);
});

test('says why where no chart is found, and leaves the corners to be set', async ({ page, start, home }) => {
  await start();
  const flat = (width: number, height: number): Uint8Array =>
    encode({ width, height, data: new Uint8Array(width * height * 4).fill(230) }, 90).data;
  for (const { name, content, complaint } of [
    { name: 'stamp.jpg', content: flat(40, 40), complaint: '40 × 40 pixels, too small to find a chart in' },
    { name: 'blank.jpg', content: flat(480, 360), complaint: 'No chart was found' },
  ]) {
    writeFileSync(join(home, name), content);
    await page.keyboard.press('Control+Shift+G');
    await new FilePanel(page).open(name);
    const dialog = page.getByRole('dialog');
    await expect(dialog.getByRole('status').filter({ hasText: complaint })).toBeVisible();
    await expect(take(page)).toBeDisabled();
    await dialog.getByRole('button', { name: 'The chart fills the picture' }).click();
    await expect(dialog.getByRole('alert')).toContainText('No evenly spaced lines or cells were found');
    await page.keyboard.press('Escape');
    await expect(dialog).toHaveCount(0);
  }
});

test('looks closer at the photo by wheel and keys, and all of it again', async ({ page, start, home }) => {
  await start();
  await openPhoto(page, home);
  const photo = page.getByRole('group', { name: /^The photo/ });
  const apart = async (): Promise<number> =>
    (await middleOf(ring(page, 'top right'))).x - (await middleOf(ring(page, 'top left'))).x;
  const whole = await apart();
  await photo.focus();
  await page.keyboard.press('+');
  await expect.poll(apart).toBeCloseTo(whole * 1.25, 0);
  await page.keyboard.press('0');
  await expect.poll(apart).toBeCloseTo(whole, 0);
  const { x, y } = await middleOf(ring(page, 'bottom left'));
  await page.mouse.move(x, y);
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -400);
  await page.keyboard.up('Control');
  await expect.poll(apart).toBeGreaterThan(whole * 2);
  // A ring that the keys move comes into view.
  await ring(page, 'top right').focus();
  await page.keyboard.press('ArrowRight');
  const pane = await restingBox(photo);
  await expect
    .poll(async () => {
      const { x, y } = await middleOf(ring(page, 'top right'));
      return x > pane.x && x < pane.x + pane.width && y > pane.y && y < pane.y + pane.height;
    })
    .toBe(true);
});

test('refuses what should not be decoded, and says where no grid is', async ({ page, start, home }) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await start();
  const huge = Uint8Array.from(photo);
  const frame = huge.findIndex((byte, place) => byte === 0xff && huge[place + 1] === 0xc0);
  huge.set([10_000 >> 8, 10_000 & 255, 10_000 >> 8, 10_000 & 255], frame + 5);
  const svg = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30">${inside}</svg>`;
  for (const { name, content, complaint } of [
    { name: 'huge.jpg', content: huge, complaint: '100 million' },
    { name: 'script.svg', content: svg('<script>document.title = "run"</script>'), complaint: 'a script' },
    {
      name: 'link.svg',
      content: svg('<image href="http://chart.invalid/a.png"/>'),
      complaint: 'a link to something outside',
    },
  ]) {
    writeFileSync(join(home, name), content);
    await page.keyboard.press('Control+Shift+G');
    await new FilePanel(page).open(name);
    await expect(page.getByRole('alert')).toContainText(complaint);
    await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();
  }
  expect(asked.filter((address) => address.includes('chart.invalid'))).toEqual([]);
  await expect(page).not.toHaveTitle('run');

  writeFileSync(join(home, 'plain.svg'), svg('<rect width="40" height="30" fill="#cfe3d8"/>'));
  await page.keyboard.press('Control+Shift+G');
  await new FilePanel(page).open('plain.svg');
  await page.getByRole('button', { name: 'The chart fills the picture' }).click();
  await expect(page.getByRole('alert')).toContainText('No evenly spaced lines or cells were found');
  await expect(take(page)).toBeDisabled();
});
