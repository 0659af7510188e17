/** The Sheet bench: what will be printed, and the files it writes. */
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { readPdf, type PageRead } from '../pdf.ts';
import { expect, expectAccessible, statusLine, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';

/** What a page says, from run to run. */
const textOf = ({ texts }: PageRead): string => texts.map(({ text }) => text).join(' ');

test('shows the pages as they will be printed, and says which one is in view', async ({ page, start }) => {
  await start();
  await page.keyboard.press('3');
  const pages = page.getByRole('region', { name: 'Pages of the placement sheet' });
  const first = pages.getByRole('document', { name: /^Page 1 of/ });
  await expect(first).toContainText('Skerry sleeve');
  await expect(first).toContainText('L39');
  await expect(statusLine(page)).toHaveText(/^Page 1 of \d/);
  const box = await restingBox(first);
  // A4 is 210 × 297 mm (ISO 216).
  expect(box.height / box.width).toBeCloseTo(297 / 210, 2);

  await page.getByLabel('Paper').selectOption('letter');
  // Letter is 8.5 × 11 in (ANSI/ASME Y14.1).
  await expect
    .poll(async () => {
      const { width, height } = await restingBox(first);
      return height / width;
    })
    .toBeCloseTo(11 / 8.5, 2);

  await page.getByLabel('Preview').selectOption('page');
  const { height: inView } = await restingBox(pages);
  await expect.poll(async () => (await restingBox(first)).height).toBeLessThanOrEqual(inView);

  await pages.focus();
  await page.keyboard.press('End');
  await expect(statusLine(page)).toHaveText(/^Page (\d+) of \1$/);
});

test('says the date of today, in the file as on the page, and another when another day begins', async ({
  page,
  start,
  home,
}) => {
  mkdirSync(join(home, 'print'));
  await page.clock.install({ time: new Date(2026, 10, 26, 23, 59, 30) });
  await start();
  await page.keyboard.press('3');
  const first = page.getByRole('document', { name: /^Page 1 of/ });
  await expect(first).toContainText('26 November 2026');
  await page.clock.fastForward(60_000);
  await expect(first).toContainText('27 November 2026');
  // A machine that slept through the night is looked at again.
  await page.clock.setSystemTime(new Date(2026, 10, 30, 8));
  await page.evaluate(() => window.dispatchEvent(new Event('focus')));
  await expect(first).toContainText('30 November 2026');

  await new FilePanel(page).exportInto('Placement sheet (PDF)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const [name = ''] = readdirSync(join(home, 'print'));
  const pages = await readPdf(readFileSync(join(home, 'print', name)));
  for (const each of pages) expect(textOf(each)).toContain('30 November 2026');
});

test('writes all files into a folder, and they hold what was placed', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('3');
  await new FilePanel(page).exportInto('Export all four', 'print');
  await expect(page.getByText(`4 files exported to ${join(home, 'print')}`)).toBeVisible();
  const names = readdirSync(join(home, 'print'));
  const listed = await page.getByRole('list', { name: 'Export files' }).getByRole('listitem').allTextContents();
  expect(listed.map((entry) => entry.split(',')[0]).sort()).toEqual([...names].sort());
  const read = (end: string): Buffer =>
    readFileSync(join(home, 'print', names.find((name) => name.endsWith(end)) ?? ''));

  const sheet = await readPdf(read('.pdf'));
  // A4 is 210 × 297 mm (ISO 216).
  expect(sheet[0]?.widthMm).toBeCloseTo(210, 1);
  expect(sheet[0]?.heightMm).toBeCloseTo(297, 1);
  const text = sheet.map(textOf).join(' ');
  for (const needle of ['L39', 'L12', 'R11', 'R38']) expect(text).toContain(needle);

  // One repeat of the lighthouse is 14 × 18 cells; a stitch is 40/28 as wide as tall.
  const chart = PNG.sync.read(read('.png'));
  expect(chart.width).toBeGreaterThan(chart.height * 0.9);
  expect(read('.svg').toString('utf8')).toContain('<svg');

  // RFC 4180: lines end in CRLF, the header first; then one line a row.
  const lines = read('.csv')
    .toString('utf8')
    .replace(/^\uFEFF/, '')
    .split('\r\n')
    .filter((line) => line !== '');
  expect(lines).toHaveLength(141);
  expect(lines.some((line) => line.includes('Set the carriage to knit the pattern'))).toBe(true);
});

test('writes one kind of file alone, on the paper chosen', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('3');
  await page.getByLabel('Paper').selectOption('letter');
  await new FilePanel(page).exportInto('Placement sheet (PDF)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const [name = ''] = readdirSync(join(home, 'print'));
  const [first] = await readPdf(readFileSync(join(home, 'print', name)));
  // Letter is 8.5 × 11 in (ANSI/ASME Y14.1).
  expect(first?.widthMm).toBeCloseTo(8.5 * 25.4, 3);
  expect(first?.heightMm).toBeCloseTo(11 * 25.4, 3);
});

test('shows, and writes, the charts that are chosen', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('3');
  const pages = page.getByRole('region', { name: 'Pages of the placement sheet' });
  const onNeedles = 'As you see it on the needles while you knit.';
  const worn = 'As it is seen when worn: the other way round than on the needles.';
  await expect(pages).toContainText(onNeedles);
  await expect(pages).toContainText(worn);
  await page.getByLabel('Charts').selectOption('needles');
  await expect(pages).not.toContainText(worn);
  await expect(pages).toContainText(onNeedles);
  await new FilePanel(page).exportInto('Placement sheet (PDF)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const [name = ''] = readdirSync(join(home, 'print'));
  const written = (await readPdf(readFileSync(join(home, 'print', name)))).map(textOf).join();
  expect(written).toContain(onNeedles);
  expect(written).not.toContain(worn);
});

test('gives up without a trace when no folder is chosen', async ({ page, start, home }) => {
  await start();
  await page.keyboard.press('3');
  await page.keyboard.press('Control+E');
  await page.getByRole('dialog').getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Export all four' })).toBeEnabled();
  expect(readdirSync(home)).toEqual([]);
});

test('says in place why nothing was written', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('3');
  await page.getByRole('button', { name: 'Row list (CSV)' }).click();
  const panel = new FilePanel(page);
  await panel.intoFolder('print');
  rmSync(join(home, 'print'), { recursive: true });
  await panel.chooseFolder();
  const problem = page.getByRole('alert');
  await expect(problem).toContainText('There is no such file or folder.');
  await expect(problem).toContainText('print');
  await expect(page.getByRole('button', { name: 'Export all four' })).toBeEnabled();
});

test('has no sheet while nothing can be placed, says why, and leads back to the piece', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.getByLabel('Copies in each group').fill('9, 9');
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await expect(page.getByText('There is no sheet yet')).toBeVisible();
  await expect(page.getByRole('alert')).toContainText('Use fewer copies');
  await expect(page.getByRole('button', { name: 'Export all four' })).toBeDisabled();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Go to the piece' }).click();
  await expect(page.getByLabel('Copies in each group')).toHaveValue('9, 9');
});

test('has nothing that axe finds wrong, and paper stays white, light and dark', async ({ page, start, home }) => {
  mkdirSync(join(home, 'print'));
  await start();
  await page.keyboard.press('3');
  await new FilePanel(page).exportInto('Chart image (PNG)', 'print');
  await expect(page.getByText(/^1 file exported to/)).toBeVisible();
  const paper = page.getByRole('document').first().locator('rect').first();
  for (const appearance of ['light', 'dark'] as const) {
    await appearAs(page, appearance);
    await expectAccessible(page);
    await expect(paper, appearance).toHaveAttribute('fill', '#ffffff');
  }
});
