/** What is done with a whole garment: taken back and done again, looked at, exported. */
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { sheetWords } from '@shared/words/sheet.ts';
import { createOffered, expect, expectAccessible, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { BODY, GARMENT, garmentText, planned, SLEEVE, yarnOfAll } from './garment.ts';
import {
  callProject,
  drawing,
  FILE,
  fill,
  heading,
  openGarment,
  press,
  redo,
  saved,
  strip,
  undo,
  whatItIs,
} from './garment-page.ts';

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
  const walk = [
    ['n', 'Back, size S'],
    [']', 'Back, size M'],
    ['n', 'Sleeve, size M'],
    [']', 'Sleeve, size L'],
    ['n', 'Front, size L'],
  ] as const;
  for (const [key, shown] of walk) {
    await press(page, key);
    await expect(drawing(page)).toHaveText(`${shown}, on the needles`);
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
  await createOffered(page);
  await expect(heading(page)).toHaveText('Untitled');
  expect(readFileSync(join(home, FILE), 'utf8')).toBe(before);
});

/** The row lists in `folder`. What is still being written has a name of its own there until it is whole. */
const rowListsIn = (folder: string): string[] => readdirSync(folder).filter((name) => name.endsWith('.csv'));

/** Exports row lists from the Sheet bench into the folder `print`: each must be one file more, without a question. */
async function exportRows(page: Page, home: string, places: readonly (readonly [of: string, size: string])[]) {
  const folder = join(home, 'print');
  mkdirSync(folder, { recursive: true });
  const panel = new FilePanel(page);
  for (const [of, size] of places) {
    await page.getByLabel('Piece', { exact: true }).selectOption({ label: of });
    await page.getByLabel('Size', { exact: true }).selectOption({ label: size });
    const before = rowListsIn(folder).length;
    await panel.exportInto('Row list (CSV)', 'print');
    await expect.poll(() => rowListsIn(folder).length).toBe(before + 1);
    await expect(page.getByRole('dialog')).toHaveCount(0);
  }
  return new Map(
    rowListsIn(folder)
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

test('tells on the Piece bench what yarn all pieces take, as the sheet does', async ({ page, start, home }) => {
  await start();
  await openGarment(page, home);
  await page.getByText(sheetWords.garment.yarnTitle, { exact: true }).click();
  const table = page.getByRole('table', { name: sheetWords.garment.yarnTitle });
  /** The figures of a line: how many are knitted, and metres. */
  const line = (of: string) =>
    table
      .getByRole('row', { name: new RegExp(`^${of}`) })
      .first()
      .getByRole('cell');
  const metres = async (): Promise<readonly (string | undefined)[]> =>
    Promise.all(['all pieces', 'to buy'].map(async (of) => (await line(of).allTextContents())[1]));
  await expect(line('front').first()).toHaveText('1');
  await expect(line('sleeve').first()).toHaveText('2');
  await expectAccessible(page);
  const of = (size: string) => yarnOfAll(join(home, FILE), size)[0];
  const said = (size: string): string[] =>
    [of(size)?.total.metres, of(size)?.toBuy.metres].map((metres) =>
      sheetWords.yarn.length((metres ?? 0) * 1000, 'cm'),
    );
  expect(await metres()).toEqual(said('S'));

  // It follows the size that is looked at and what is changed, and stays open.
  await press(page, ']');
  await expect.poll(metres).toEqual(said('M'));
  await fill(page, 'Knit how many', 2);
  await expect(line('front').first()).toHaveText('2');
  await page.keyboard.press('Control+S');
  await expect(saved(page)).toBeVisible();
  expect(await metres()).toEqual(said('M'));

  // By the keyboard it is put away and had again.
  const fold = page.getByText(sheetWords.garment.yarnTitle, { exact: true });
  await fold.focus();
  await page.keyboard.press('Enter');
  await expect(table).toBeHidden();
  await page.keyboard.press('Enter');
  await expect(line('front').first()).toHaveText('2');
});
