/** The sheet and the files of all pieces and all sizes. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { projectToText, type Project } from '@shared/project/index.ts';
import { garment } from '../garment.ts';
import { readPdf } from '../pdf.ts';
import { expect, expectAccessible, statusLine, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';

const pages = (page: Page) => page.getByRole('region', { name: 'Pages of the placement sheet' });

async function openOnSheet(page: Page, home: string, project: Project): Promise<void> {
  writeFileSync(join(home, 'garment.walewright'), projectToText(project));
  mkdirSync(join(home, 'print'));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject('garment.walewright', project.name);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await expect(pages(page).getByRole('document').first()).toContainText('Front');
}

/** How many pages the sheet takes, as the bench says once all are there. */
async function pageCount(page: Page): Promise<number> {
  const said = page.getByText(/^The placement sheet takes \d+ pages/);
  return Number(/\d+/.exec((await said.textContent()) ?? '')?.[0]);
}

test('shows the pages of all pieces behind the yarn that they take, and of all sizes', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openOnSheet(page, home, garment());
  await page.getByLabel('Piece', { exact: true }).selectOption('all 2 pieces');
  await expect(pages(page).getByRole('document').first()).toContainText('Yarn for all pieces');
  await expect(pages(page)).toHaveAttribute('aria-busy', 'false');
  await expect(statusLine(page)).toHaveText('Page 1 of 1 of all pieces, size S');
  const count = await pageCount(page);
  await expect(pages(page).getByRole('document')).toHaveCount(count);
  await page.getByLabel('Size', { exact: true }).selectOption('all 2 sizes');
  await expect(pages(page)).toHaveAttribute('aria-busy', 'false');
  await expect(pages(page).getByRole('document')).toHaveCount(2 * count);
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);

  // One piece again, in the size that is chosen.
  await page.getByLabel('Piece', { exact: true }).selectOption('sleeve');
  await page.getByLabel('Size', { exact: true }).selectOption('M');
  await expect(pages(page).getByRole('document').first()).toContainText('Sleeve, size M');
  await expect(pages(page).getByRole('document').first()).not.toContainText('Yarn for all pieces');
});

test('tells grams and balls of a yarn once its band is told', async ({ page, start, home }) => {
  await start();
  await openOnSheet(page, home, garment());
  await page.getByRole('button', { name: 'Motif', exact: true }).click();
  await page.getByRole('button', { name: 'Change slate' }).click();
  const inBall = page.getByLabel(/^Metres in a ball/);
  // 1 g a metre, as its label tells it: in tex.
  await expect(page.getByLabel(/^Count in tex/)).toHaveValue('1000');
  await page.getByLabel('Count on the label').selectOption('length of a ball');
  await expect(page.getByLabel('A ball weighs')).toHaveValue('50');
  await expect(inBall).toHaveValue('50');
  await inBall.fill('0');
  await expect(page.getByText(/from 0\.1 to 100000/)).toBeVisible();
  await inBall.fill('100');
  await inBall.blur();
  await page.getByRole('button', { name: 'Change chalk' }).click();
  await page.getByLabel('Count on the label').selectOption('length of a ball');
  await expect(inBall).toHaveValue('');
  await inBall.fill('175');
  await inBall.blur();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByLabel('Piece', { exact: true }).selectOption('all 2 pieces');
  const first = pages(page).getByRole('document').first();
  // 145 m, of which 100 weigh 50 g, are 73 g; of chalk 0.8 m, of which 175 do, are 0.2 g.
  await expect(first).toContainText(/to buy, 10 % more, in balls of\s*50 g\s*145\s*73\s*2/);
  await expect(first).toContainText(/to buy, 10 % more, in balls of\s*50 g\s*0\.8\s*0\.2\s*1/);
});

test('writes the pages that it shows, a file for each size, under names of their own', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openOnSheet(page, home, garment());
  await page.getByLabel('Piece', { exact: true }).selectOption('all 2 pieces');
  await page.getByLabel('Size', { exact: true }).selectOption('all 2 sizes');
  await expect(pages(page)).toHaveAttribute('aria-busy', 'false');
  const count = await pageCount(page);
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await expect(page.getByText(/^4 files exported to/)).toBeVisible();
  await new FilePanel(page).exportInto('Placement sheet (PDF)', 'print');
  await expect(page.getByText(/^2 files exported to/)).toBeVisible();
  const rows = ['front', 'sleeve'].flatMap((piece) => ['S', 'M'].map((size) => `${piece}, size ${size} - rows.csv`));
  const sheets = ['S', 'M'].map((size) => `all pieces, size ${size} - placement.pdf`);
  const names = [...rows, ...sheets].map((name) => `Skerry, ${name}`).sort();
  expect(readdirSync(join(home, 'print')).sort()).toEqual(names);
  for (const size of ['S', 'M']) {
    const sheet = await readPdf(readFileSync(join(home, 'print', `Skerry, all pieces, size ${size} - placement.pdf`)));
    expect(sheet).toHaveLength(count / 2);
    for (const { squeezed } of sheet)
      expect(squeezed).toMatch(new RegExp(`^Skerry·(allpieces|front|sleeve),size${size}·`));
  }
  // All that are there are asked about at once.
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await new FilePanel(page).replace(/^Replace/, false);
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect(readdirSync(join(home, 'print')).sort()).toEqual(names);
});

test('an export of many files can be given up before the first is written', async ({ page, start, home }) => {
  const { pieces, ...project } = garment();
  const [front] = pieces;
  if (!front) throw new Error('It has a front');
  const many = Array.from({ length: 24 }, (_, at) => ({ ...front, id: `piece-${at}`, name: `${front.name} ${at}` }));
  await start();
  await openOnSheet(page, home, { ...project, pieces: many });
  // One first, for which the host loads what all of them take.
  await new FilePanel(page).exportInto('Row list (CSV)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const [one] = readdirSync(join(home, 'print'));
  await page.getByLabel('Piece', { exact: true }).selectOption('all 24 pieces');
  await expect(pages(page)).toHaveAttribute('aria-busy', 'false');
  await new FilePanel(page).exportInto('Export all four', 'print');
  await new FilePanel(page).replace(/^Replace/, true);
  await page.getByRole('button', { name: 'Cancel the export' }).click();
  await expect(page.getByRole('button', { name: 'Cancel the export' })).toHaveCount(0);
  await expect(page.getByText(/files? exported to/)).toHaveCount(0);
  expect(readdirSync(join(home, 'print'))).toEqual([one]);
  await expect(page.getByRole('button', { name: 'Export all four' })).toBeEnabled();
});
