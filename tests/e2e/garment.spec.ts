/** A whole garment, as one person makes it: a front, a back and two sleeves, in three sizes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFromText } from '@shared/project/index.ts';
import { expect, test } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import { BODY, GARMENT, garmentText, planned, RING, SIZES, SLEEVE, type SizeName } from './garment.ts';
import { callProject, FILE, fill, openGarment, piece, press, saved, whatItIs } from './garment-page.ts';

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
