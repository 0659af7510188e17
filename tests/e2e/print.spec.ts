/** Printing: what a printer is given is the sheet, page for page, and never the window. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { localDay } from '@shared/day/index.ts';
import { placementSheet, sheetFacts, type PaperSize, type SheetDocument } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { projectAt, pieceIn, sampleProject, type ProjectAt } from '@shared/project/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { textOf } from '@shared/words/index.ts';
import { fileTextOf } from '../written-projects.ts';
import { readPdf, type PageRead } from '../pdf.ts';
import { textBox, textsOf } from '../unit/output/items-of.ts';
import { expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';

const NOW = new Date(2026, 10, 26, 12);

/** The sheet of a project, as the window should have it now. */
function sheetOn(paper: PaperSize, project = projectAt(sampleProject())): SheetDocument {
  return placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper, date: localDay(NOW) });
}

/** Counts the times that the page opens the browser's dialog, which a test cannot answer, and keeps it shut. */
async function countDialogs(page: Page): Promise<() => Promise<number>> {
  await page.clock.setFixedTime(NOW);
  await page.addInitScript(() => {
    const counted = window as { dialogs?: number };
    counted.dialogs = 0;
    window.print = () => void (counted.dialogs = (counted.dialogs ?? 0) + 1);
  });
  return () => page.evaluate(() => (window as { dialogs?: number }).dialogs ?? 0);
}

/** What comes out of a printer that keeps to the sizes the page asks for. */
async function printed(page: Page): Promise<PageRead[]> {
  return readPdf(await page.pdf({ preferCSSPageSize: true }));
}

const squeezed = (text: string): string => text.replaceAll(/\s/g, '');

/** Each page has the size and the words of the sheet's, each line where it stands there. */
function expectSheet(pages: readonly PageRead[], sheet: SheetDocument): void {
  expect(pages).toHaveLength(sheet.pages.length);
  sheet.pages.forEach((page, index) => {
    const read = pages[index] as PageRead;
    expect(Math.abs(read.widthMm - page.widthMm), page.title).toBeLessThan(0.4);
    expect(Math.abs(read.heightMm - page.heightMm), page.title).toBeLessThan(0.4);
    const lines = textsOf(page);
    expect(read.squeezed, page.title).toBe(squeezed(lines.map(({ spans }) => textOf(spans)).join('')));
    for (const line of lines.filter(({ anchor }) => anchor === 'start')) {
      const words = textOf(line.spans);
      const { right } = textBox(line);
      const stands = ({ x, y, text, widthMm }: PageRead['texts'][number]): boolean => {
        if (Math.abs(y - line.y) >= 0.3) return false;
        if (Math.abs(x - line.x) < 0.3) return words.startsWith(text.trim()) || text.startsWith(`${words} `);
        // The reader joins a sentence to the mark before it; where it ends, kerned by the browser, stands for where it begins.
        return text.startsWith('• ') && text.endsWith(words) && Math.abs(x + widthMm - right) < 1.5;
      };
      expect(read.texts.some(stands), `${page.title}: ${words}`).toBe(true);
    }
    for (const { text, x, y, widthMm } of read.texts) {
      expect(x >= 0 && x + widthMm <= page.widthMm && y > 0 && y < page.heightMm, `cut: ${text}`).toBe(true);
    }
  });
}

test('by Ctrl+P on any bench gives a printer the pages of the sheet, and nothing of the window', async ({
  page,
  start,
}) => {
  const dialogs = await countDialogs(page);
  await start();
  // Heard by the program, or the browser would print as well.
  await page.evaluate(() => {
    window.addEventListener(
      'keydown',
      (event) => (document.title = `${event.key.toLowerCase()} ${event.defaultPrevented}`),
    );
  });
  await page.keyboard.press('Control+P');
  await expect(page).toHaveTitle('p true');
  await expect.poll(dialogs).toBe(1);
  expectSheet(await printed(page), sheetOn('a4'));

  // In a text field it is the program's too; and from the Sheet bench, on the paper chosen there.
  await page.keyboard.press('3');
  await page.getByLabel('Paper').selectOption('letter');
  await page.getByLabel('Paper').press('Control+P');
  await expect.poll(dialogs).toBe(2);
  expectSheet(await printed(page), sheetOn('letter'));
});

test('is a button on the Sheet bench, by keyboard as well, that keeps the focus', async ({ page, start }) => {
  const dialogs = await countDialogs(page);
  await start();
  await page.keyboard.press('3');
  const button = page.getByRole('button', { name: 'Print…' });
  await button.focus();
  await page.keyboard.press('Enter');
  await expect.poll(dialogs).toBe(1);
  await expect(button).toBeFocused();
  await expect(button).toHaveAccessibleDescription(/landscape/);
  for (const appearance of ['light', 'dark'] as const) {
    await appearAs(page, appearance);
    await expectAccessible(page);
  }
});

test('turns the pages that a wide piece takes, and no others', async ({ page, start, home }) => {
  const sample = projectAt(sampleProject());
  const shape = { kind: 'rectangle', stitches: 180, rows: 50 } as const;
  const wide: ProjectAt = {
    ...sample,
    name: 'Wide',
    piece: { ...sample.piece, shape },
    patterns: bandsOf(sample).map((band) => ({ ...band, position: { kind: 'from-row', row: 20 } })),
  };
  writeFileSync(join(home, 'wide.walewright'), fileTextOf(wide));
  const dialogs = await countDialogs(page);
  await start();
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject('wide.walewright', 'Wide');
  await page.keyboard.press('Control+P');
  await expect.poll(dialogs).toBe(1);
  const pages = await printed(page);
  expectSheet(pages, sheetOn('a4', wide));
  const [first, ...others] = pages.map(({ widthMm, heightMm }) => widthMm > heightMm);
  expect([first, new Set(others)]).toEqual([true, new Set([false])]);
});

test('held down opens one dialog', async ({ page, start }) => {
  const dialogs = await countDialogs(page);
  await start();
  await page.keyboard.down('Control');
  for (let times = 0; times < 3; times++) await page.keyboard.down('p');
  await page.keyboard.up('p');
  await page.keyboard.up('Control');
  await expect.poll(dialogs).toBe(1);
  await page.keyboard.press('Control+P');
  await expect.poll(dialogs).toBe(2);
});

test('is on white paper, whatever the appearance of the window', async ({ page, start }) => {
  await countDialogs(page);
  await start();
  await page.keyboard.press('3');
  await appearAs(page, 'dark');
  await expect(page.getByRole('document', { name: /^Page 1 of/ })).toBeVisible();
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const onScreen = page.locator('.printed');
  await expect(onScreen).toBeHidden();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.printed').getByRole('document', { name: /^Page 1 of/ })).toBeVisible();
  for (const chrome of ['button', 'banner', 'contentinfo', 'combobox'] as const) {
    await expect(page.getByRole(chrome), chrome).toHaveCount(0);
  }
  for (const part of ['html', 'body'])
    await expect(page.locator(part)).toHaveCSS('background-color', /^rgba?\((255, 255, 255\)|0, 0, 0, 0\))$/);
  await expect(page.locator('html')).toHaveCSS('color-scheme', 'light');
  await expect(page.locator('.printed rect').first()).toHaveAttribute('fill', '#ffffff');
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await expect(onScreen).toHaveCount(0);
});

test('says why there is no sheet to print, and keeps the window off the paper', async ({ page, start }) => {
  const dialogs = await countDialogs(page);
  await start();
  // By the browser's own command, before the program has loaded what printing takes.
  const early = await printed(page);
  expect(early.map(({ texts }) => texts.map(({ text }) => text).join(' ')).join('')).toMatch(
    /^To print the placement sheet/,
  );

  await page.keyboard.press('2');
  await page.getByLabel('Copies in each group').fill('9, 9');
  await page.keyboard.press('Control+P');
  // The bench says it in place as well.
  await expect(page.locator('.bars').getByText('Use fewer copies')).toBeVisible();
  expect(await dialogs()).toBe(0);
  const [only, ...others] = await printed(page);
  expect(others).toEqual([]);
  expect(only?.squeezed).toMatch(/^Thereisnosheetyet/);
  expect(only?.squeezed).toContain('Usefewercopies');
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Print…' })).toBeDisabled();
});
