/** A whole garment, as one person makes it: a front, a back and two sleeves. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { projectFromText } from '@shared/project/index.ts';
import { expect, test } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import {
  BODY,
  GARMENT,
  garmentText,
  planned,
  RING,
  SIZES,
  SLEEVE,
  type GarmentSoFar,
  type SizeName,
} from './garment.ts';

const FILE = `${GARMENT}.walewright`;

const strip = (page: Page) => page.getByRole('toolbar', { name: 'Pieces' });
const piece = (page: Page) => strip(page).locator('[aria-current]');
const whatItIs = (page: Page) => page.getByRole('region', { name: 'What it is' });
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const redo = (page: Page) => page.getByRole('button', { name: /^Redo/ });
const saved = (page: Page) => page.getByText('saved', { exact: true });
const heading = (page: Page) => page.getByRole('banner').getByRole('heading', { level: 1 });
const drawing = (page: Page) => page.getByRole('heading', { name: /, (on the needles|as worn)$/ });

async function fill(page: Page, label: string, value: number | string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(String(value));
  await field.blur();
}

/** Presses a key while the drawing has the focus. */
async function press(page: Page, key: string): Promise<void> {
  await page.getByRole('grid').focus();
  await page.keyboard.press(key);
}

async function callProject(page: Page, name: string): Promise<void> {
  await page.keyboard.press('F2');
  await expect(page.getByLabel('Name of the project')).toBeFocused();
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await expect(heading(page)).toHaveText(name);
}

/** Opens the pullover, as far as it is made, from a file on the Piece bench. */
async function openGarment(page: Page, home: string, soFar: GarmentSoFar = {}): Promise<void> {
  writeFileSync(join(home, FILE), garmentText(soFar));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(FILE, GARMENT);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(drawing(page)).toHaveText(/^Front,.* on the needles$/);
}

test('is begun from nothing: a motif, a front, and a back like it', async ({ page, start, home }) => {
  await start('empty');
  await callProject(page, GARMENT);
  await fill(page, 'Stitches', 4);
  await fill(page, 'Rows', 4);
  const chart = new Chart(page);
  await chart.drag([2, 1], [3, 1]);
  await chart.drag([1, 2], [1, 3]);
  await chart.drag([4, 2], [4, 3]);
  await chart.drag([2, 4], [3, 4]);
  await expect.poll(() => chart.shown()).toEqual(RING);

  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByText('Size, gauge, edges').click();
  await fill(page, 'Name', 'front');
  await fill(page, 'Stitches', BODY.S.stitches);
  await fill(page, 'Rows', BODY.S.rows);
  await fill(page, 'Copies in each group', '1, 1');
  // 40 stitches at 28 in 10 cm, 60 rows at 40.
  await expect(whatItIs(page)).toContainText('40 stitches × 60 rows, 14.3 × 15 cm.');
  await expect(whatItIs(page)).toContainText('The groups start at needles L12 and R9, on rows 29–32.');

  await press(page, 'Shift+P');
  await expect(piece(page)).toHaveText('front copy');
  await fill(page, 'Name', 'back');
  await expect(whatItIs(page)).toContainText('The groups start at needles L12 and R9, on rows 29–32.');

  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  await expect(panel.dialog.getByLabel('Name')).toHaveValue(FILE);
  await panel.saveHere();
  await expect(saved(page)).toBeVisible();
  for (const name of ['front', 'back']) {
    const plan = planned(join(home, FILE), name);
    const { stitches, rows, first, onRows } = BODY.S;
    expect(plan).toMatchObject({ size: null, knit: 1, piece: { name, stitches, rows } });
    expect(plan.groups.map((group) => group.first)).toEqual(first);
    for (const { firstRow, lastRow } of plan.groups) expect([firstRow, lastRow]).toEqual(onRows);
  }
});

test('gets two sleeves, of another shape', async ({ page, start, home }) => {
  await start();
  await openGarment(page, home, { sizes: ['S'], pieces: ['front', 'back'] });
  await press(page, 'n');
  await page.getByText('Size, gauge, edges').click();
  await press(page, 'Shift+N');
  await expect(piece(page)).toHaveText('piece 3');
  await fill(page, 'Name', 'sleeve');
  await page.getByLabel('Shape', { exact: true }).selectOption('tapered');
  await fill(page, 'Stitches at the cast-on', SLEEVE.S.castOn);
  await fill(page, 'Stitches at the top', SLEEVE.S.atTop);
  await fill(page, 'Rows', SLEEVE.S.rows);
  await fill(page, 'Rows without shaping at the top', 6);
  await fill(page, 'Knit how many', 2);
  await expect(piece(page)).toHaveText(/^sleeve\s*× 2$/);
  await expect(whatItIs(page)).toContainText('From 24 to 36 stitches over 50 rows: 8.6 to 12.9 cm wide, 12.5 cm long.');

  await page.keyboard.press('Control+S');
  await expect(saved(page)).toBeVisible();
  const { castOn, atTop, rows } = SLEEVE.S;
  const plan = planned(join(home, FILE), 'sleeve');
  expect(plan).toMatchObject({ size: null, knit: 2, piece: { stitches: castOn, rows }, groups: [] });
  expect(plan.rows.at(-1)?.edges).toEqual([`L${atTop / 2}`, `R${atTop / 2}`]);
});

test('comes in three sizes: one typed, the next as much larger again, each piece by itself', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openGarment(page, home, { sizes: ['S'] });
  await press(page, 's');
  const dialog = page.getByRole('dialog', { name: `Sizes of ${GARMENT}` });
  const cell = (line: string, size: SizeName) =>
    dialog.getByRole('textbox', { name: `${line}, size ${size}`, exact: true });
  const addSize = async (name: SizeName): Promise<void> => {
    await dialog.getByRole('button', { name: 'Add a size' }).click();
    await dialog.getByLabel('Name', { exact: true }).fill(name);
    await dialog.getByRole('button', { name: `Add size ${name}` }).click();
  };
  const lines = (size: SizeName) => [
    { of: 'front', numbers: { Stitches: BODY[size].stitches, Rows: BODY[size].rows } },
    { of: 'back', numbers: { Stitches: BODY[size].stitches, Rows: BODY[size].rows } },
    {
      of: 'sleeve',
      numbers: {
        'Stitches at the cast-on': SLEEVE[size].castOn,
        'Stitches at the top': SLEEVE[size].atTop,
        Rows: SLEEVE[size].rows,
      },
    },
  ];
  await dialog.getByLabel('Name of size 1').fill('S');
  await addSize('M');
  for (const { of, numbers } of lines('M')) {
    await dialog.getByLabel('Piece', { exact: true }).selectOption({ label: of });
    for (const [line, number] of Object.entries(numbers)) await cell(line, 'M').fill(String(number));
  }
  await addSize('L');
  for (const { of, numbers } of lines('L').reverse()) {
    await dialog.getByLabel('Piece', { exact: true }).selectOption({ label: of });
    for (const [line, number] of Object.entries(numbers)) await expect(cell(line, 'L')).toHaveValue(String(number));
  }
  const found = (line: string) => dialog.getByRole('row', { name: new RegExp(`^${line}`) }).getByRole('cell');
  await expect(found('Left-hand needles')).toHaveText(SIZES.map((size) => BODY[size].first.join(', ')));
  await expect(found('On rows')).toHaveText(SIZES.map((size) => BODY[size].onRows.join('–')));

  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+S');
  await expect(saved(page)).toBeVisible();
  const shapes = (text: string) =>
    projectFromText(text).pieces.map(({ name, knit, perSize }) => [name, knit, perSize.map(({ shape }) => shape)]);
  expect(shapes(readFileSync(join(home, FILE), 'utf8'))).toEqual(shapes(garmentText()));
  const front = planned(join(home, FILE), 'front', 'L');
  expect(front).toMatchObject({ size: 'L', piece: { stitches: BODY.L.stitches, rows: BODY.L.rows } });
  expect(front.groups.map(({ first }) => first)).toEqual(BODY.L.first);
});

test('is undone step by step, wherever each step was made, and done again', async ({ page, start, home }) => {
  await start();
  await openGarment(page, home);
  await fill(page, 'Copies in each group', '1');
  await press(page, 'n');
  await expect(drawing(page)).toHaveText('Back, size S, on the needles');
  await page.getByText('Size, gauge, edges').click();
  await fill(page, 'Stitches', 44);
  await press(page, 'n');
  await press(page, ']');
  await expect(drawing(page)).toHaveText('Sleeve, size M, on the needles');
  await fill(page, 'Rows', 62);
  await fill(page, 'Knit how many', 4);
  await press(page, 'n');
  await press(page, 'Shift+Backspace');
  await expect(strip(page).getByRole('button')).toHaveText(['back', /^sleeve\s*× 4$/]);

  // What each step back shows, from where the next one was left: the piece and the size that it changes.
  const steps = [
    { name: 'Undo remove the piece', shows: 'Front, size M, on the needles' },
    { name: 'Undo change how many are knitted', shows: 'Sleeve, size M, on the needles' },
    { name: 'Undo change size of piece', shows: 'Sleeve, size M, on the needles' },
    { name: 'Undo change size of piece', shows: 'Back, size S, on the needles' },
    { name: 'Undo change copies', shows: 'Front, size S, on the needles' },
  ];
  for (const { name, shows } of steps) {
    await expect(undo(page)).toHaveAccessibleName(name);
    await page.keyboard.press('Control+Z');
    await expect(drawing(page)).toHaveText(shows);
  }
  await expect(undo(page)).toBeDisabled();
  await expect(saved(page)).toBeVisible();
  await expect(whatItIs(page)).toContainText('The groups start at needles L12 and R9');

  for (const { shows } of steps.toReversed().slice(0, -1)) {
    await page.keyboard.press('Control+Shift+Z');
    await expect(drawing(page)).toHaveText(shows);
  }
  await page.keyboard.press('Control+Shift+Z');
  await expect(redo(page)).toBeDisabled();
  await expect(strip(page).getByRole('button')).toHaveText(['back', /^sleeve\s*× 4$/]);
  await page.keyboard.press('Control+S');
  await expect(saved(page)).toBeVisible();
  expect(planned(join(home, FILE), 'back', 'S').piece).toMatchObject({ stitches: 44, rows: BODY.S.rows });
  expect(planned(join(home, FILE), 'sleeve', 'M')).toMatchObject({ knit: 4, piece: { rows: 62 } });
});

test('is looked at all over without a question, and is left as it was', async ({ page, start, home, folder }) => {
  await start();
  await openGarment(page, home);
  const before = readFileSync(join(home, FILE), 'utf8');
  for (const name of ['Back', 'Sleeve', 'Front']) {
    await press(page, 'n');
    await expect(drawing(page)).toHaveText(`${name}, size S, on the needles`);
    for (const size of ['M', 'L']) {
      await press(page, ']');
      await expect(drawing(page)).toHaveText(`${name}, size ${size}, on the needles`);
    }
    for (const _ of ['M', 'S']) await press(page, '[');
  }
  await press(page, 'c');
  await expect(page.getByRole('slider', { name: 'front, seamed, as worn' })).toBeVisible();
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByLabel('Piece', { exact: true }).selectOption('sleeve');
  await page.getByLabel('Size', { exact: true }).selectOption('L');
  await expect(page.getByRole('document').first()).toContainText('size L');
  await page.getByRole('button', { name: 'Motif', exact: true }).click();
  await expect(page.getByRole('grid')).toBeVisible();

  await expect(undo(page)).toBeDisabled();
  await expect(saved(page)).toBeVisible();
  // Nothing was kept aside either, nor is anything asked before another project takes its place.
  expect(readdirSync(join(folder, 'data')).filter((name) => name === 'recovery')).toEqual([]);
  await page.keyboard.press('Control+Shift+N');
  await expect(heading(page)).toHaveText('Untitled');
  expect(readFileSync(join(home, FILE), 'utf8')).toBe(before);
});

/** Exports row lists from the Sheet bench into the folder `print`: each must be one file more, without a question. */
async function exportRows(page: Page, home: string, places: readonly (readonly [of: string, size: string])[]) {
  const folder = join(home, 'print');
  mkdirSync(folder, { recursive: true });
  const panel = new FilePanel(page);
  for (const [of, size] of places) {
    await page.getByLabel('Piece', { exact: true }).selectOption({ label: of });
    await page.getByLabel('Size', { exact: true }).selectOption({ label: size });
    const before = readdirSync(folder).length;
    await page.getByRole('button', { name: 'Row list (CSV)' }).click();
    await panel.intoFolder('print');
    await panel.chooseFolder();
    await expect.poll(() => readdirSync(folder).length).toBe(before + 1);
    await expect(page.getByRole('dialog')).toHaveCount(0);
  }
  return new Map(
    readdirSync(folder)
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  );
}

/** A line for each row, below the header. */
const rowsIn = (csv: string | undefined): number => (csv?.trimEnd().split('\r\n').length ?? 0) - 1;

test('exports pieces and sizes into one folder, each under a name of its own', async ({ page, start, home }) => {
  await start();
  await openGarment(page, home);
  // A name that most file systems take for the front's.
  await press(page, 'n');
  await page.getByText('Size, gauge, edges').click();
  await fill(page, 'Name', 'Front');
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  const files = await exportRows(page, home, [
    ['front', 'S'],
    ['Front', 'L'],
  ]);
  const names = ['Front, size L (2)', 'front, size S'];
  expect([...files.keys()]).toEqual(names.map((of) => `${GARMENT}, ${of} - rows.csv`));
  expect([...files.values()].map(rowsIn)).toEqual([BODY.L.rows, BODY.S.rows]);
});

test('exports under a second name beside what was exported under the first', async ({ page, start, home }) => {
  await start();
  await openGarment(page, home);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  const first = await exportRows(page, home, [['sleeve', 'M']]);
  expect([...first.values()].map(rowsIn)).toEqual([SLEEVE.M.rows]);
  await callProject(page, 'Skerry pullover');
  await page.keyboard.press('Control+Shift+S');
  await new FilePanel(page).saveAs('Skerry pullover');
  await expect(saved(page)).toBeVisible();
  const both = await exportRows(page, home, [['sleeve', 'M']]);
  expect([...both.keys()]).toEqual([GARMENT, 'Skerry pullover'].map((name) => `${name}, sleeve, size M - rows.csv`));
  for (const [name, content] of first) expect(both.get(name), name).toBe(content);
  // The project under its first name is a file as it was.
  expect(readFileSync(join(home, FILE), 'utf8')).toBe(garmentText());
});
