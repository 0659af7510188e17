/** The first hour: what somebody new to the program gets done, and in how many actions. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encode } from 'jpeg-js';
import { gridToText } from '@shared/grid/index.ts';
import { readPdf } from '../pdf.ts';
import { photograph } from '../unit/reading/chart-photo.ts';
import { charts } from '../unit/reading/charts.ts';
import { blobs } from '../unit/reading/motifs.ts';
import { expect, test } from './app.ts';
import { Chart } from './chart.ts';
import { Newcomer } from './newcomer.ts';

/** Graph paper, inked in, held a little askew. */
const style = (charts[0] as (typeof charts)[number]).style;
const grid = blobs(16, 14, 2, 5);
const CAMERA = { width: 480, height: 420, roll: 5, tilt: 10, pan: -8, fill: 0.84 };

test.use({ viewport: { width: 1280, height: 800 } });

test('a border of 24 × 20 with symmetry, in at most 7 actions', async ({ page, start }) => {
  await start();
  const newcomer = new Newcomer(page);
  await newcomer.press('New motif');
  const dialog = page.getByRole('dialog', { name: 'New project' });
  await newcomer.type('Rows of the motif', 20, dialog);
  await newcomer.press('Create', dialog);
  await newcomer.choose('Symmetry', 'left and right');
  await newcomer.drag([3, 4], [10, 15]);
  const rows = await new Chart(page).shown();
  expect(rows).toHaveLength(20);
  expect(rows.join('')).toContain('#');
  expect(rows.map((row) => [...row].reverse().join(''))).toEqual(rows);
  expect(newcomer.actions).toBeLessThanOrEqual(7);
});

test('a chart read from a photo, in at most 5 actions', async ({ page, start, home }) => {
  const photo = photograph(grid, style, CAMERA, { blur: 0.6, noise: 3 }).picture;
  writeFileSync(join(home, 'graph paper.jpg'), encode({ ...photo, data: photo.rgba }, 85).data);
  await start();
  const newcomer = new Newcomer(page);
  await newcomer.press('Read a chart');
  await newcomer.press(/^graph paper\.jpg/);
  await newcomer.press('Open');
  // The chart is found by itself, and offered for confirmation.
  await expect(page.getByRole('textbox', { name: 'Columns' })).toHaveValue('16', { timeout: 20_000 });
  await newcomer.press('Use as the motif');
  // Paper is the chalk of the project and becomes the ground; ink is a yarn of its own, which has no letter here.
  await expect.poll(() => new Chart(page).shown()).toEqual(gridToText(grid, '#?'));
  expect(newcomer.actions).toBeLessThanOrEqual(5);
});

test('a hemmed sleeve with two groups to a written sheet, in at most 14 actions', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  const newcomer = new Newcomer(page);
  await newcomer.press('New piece');
  const dialog = page.getByRole('dialog', { name: 'New project' });
  await newcomer.type('Round the wrist', 22, dialog);
  await newcomer.type('Length', 40, dialog);
  await newcomer.type('Depth of a folded hem', 3, dialog);
  await newcomer.choose('Motif', 'one to draw', dialog);
  await newcomer.press('Create', dialog);
  await newcomer.drag([4, 4], [20, 20]);
  await newcomer.press('Piece');
  await newcomer.press('Add a group');
  await expect(page.getByLabel('Copies in each group')).toHaveValue('1, 1');
  await newcomer.press('Sheet');
  await newcomer.press('Placement sheet (PDF)');
  await newcomer.press('print, folder');
  await newcomer.press('Choose this folder');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const [name = ''] = readdirSync(join(home, 'print')).filter((file) => file.endsWith('.pdf'));
  expect((await readPdf(readFileSync(join(home, 'print', name))))[0]?.squeezed).toContain('Placementsheet');
  expect(newcomer.actions).toBeLessThanOrEqual(14);
});

test('a hat of six single motifs, in at most 9 actions', async ({ page, start }) => {
  await start();
  const newcomer = new Newcomer(page);
  await newcomer.press('New piece');
  const dialog = page.getByRole('dialog', { name: 'New project' });
  await newcomer.choose('Piece', 'Hat or cuff', dialog);
  await newcomer.choose('Motif', 'one to draw', dialog);
  await newcomer.press('Create', dialog);
  await newcomer.drag([4, 4], [12, 12]);
  await newcomer.press('Piece');
  await newcomer.type(/^Single motifs/, 6);
  await expect(page.getByLabel('Copies in each group')).toHaveValue('1, 1, 1, 1, 1, 1');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('The groups start at needles');
  expect(newcomer.actions).toBeLessThanOrEqual(9);
});

test('a front with an all-over in three sizes, in at most 20 actions', async ({ page, start }) => {
  await start();
  const newcomer = new Newcomer(page);
  await newcomer.press('New piece');
  const dialog = page.getByRole('dialog', { name: 'New project' });
  await newcomer.choose('Piece', 'Front or back', dialog);
  await newcomer.type('Width', 48, dialog);
  await newcomer.choose('Motif', 'one to draw', dialog);
  await newcomer.press('Create', dialog);
  await newcomer.drag([4, 4], [20, 20]);
  await newcomer.press('Piece');
  await newcomer.press(/^Repeat motif all over, in place of/);
  await newcomer.press('Show all sizes');
  const table = page.getByRole('dialog', { name: /^Sizes of/ });
  for (const [size, stitches] of [
    ['2', 150],
    ['3', 164],
  ] as const) {
    await newcomer.press('Add a size', table);
    await newcomer.type(`Stitches, size ${size}`, stitches, table);
    await newcomer.press(`Add size ${size}`, table);
  }
  await newcomer.press('Close', table);
  await expect(page.getByRole('heading', { name: 'Front, size 3, on the needles' })).toBeVisible();
  expect(newcomer.actions).toBeLessThanOrEqual(20);
});
