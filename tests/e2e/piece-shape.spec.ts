import type { Locator, Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { openFindings } from './piece-bench.ts';

/** What the sample's piece is, with its sizes open to be changed. */
async function openedSizes(page: Page, start: () => Promise<unknown>): Promise<Locator> {
  await start();
  await page.keyboard.press('2');
  const what = page.getByRole('region', { name: 'What it is' });
  await what.getByRole('button', { name: 'Size, gauge, edges' }).click();
  return what;
}

test('shapes a sleeve head row by row, and keeps a list that has a wrong line', async ({ page, start }) => {
  const what = await openedSizes(page, start);
  await what.getByLabel('Shape', { exact: true }).selectOption('shaped row by row');
  const lines = page.getByRole('textbox', { name: 'Shaping, row by row' });
  // The sample's sleeve goes from 96 to 124 stitches, 14 at each edge, in 126 rows: every 9th row.
  await expect(lines).toHaveValue(/^row 9: \+1 at each edge\nrow 18: \+1 at each edge\n/);
  await lines.fill('row 130: -4 at the left\nrow 131: -4 at the right\nrow 131: -1 at the left');
  await expect(page.getByRole('alert')).toContainText('Row 131 stands on more than one line.');
  await lines.blur();
  await expect(lines).toHaveValue(/row 131: -1 at the left$/);
  await expectAccessible(page);
  await lines.fill('row 130: -4 at the left\nrow 131: -20 in the middle');
  await expect(page.getByRole('alert')).toContainText('would divide the piece');
  await expect(page.getByRole('alert')).toContainText('plan each side as a piece of its own');
  await lines.fill('row 130: -4 at the left\nrow 131: -4 at the right\nrow 200: -1 at the left');
  await expect(page.getByRole('alert')).toContainText('The shaping goes up to row 200, but the piece ends at row 140.');
  await lines.fill('row 130: -4 at the left\nrow 131: -4 at the right');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(what).toContainText(
    'Decrease 4 stitches at the left edge before row 130; decrease 4 stitches at the right edge before row 131.',
  );
  await lines.blur();
  await what.getByLabel('Shape', { exact: true }).selectOption('body with a waist');
  await expect(what).toContainText('96 stitches at the cast-on, 80 at the waist on row 46');
  await page.getByLabel('Rows up to the waist', { exact: true }).fill('7');
  await expect(page.getByRole('alert')).toContainText(
    '8 changes at an edge do not fit in the 6 rows that can be shaped.',
  );
  await page.getByLabel('Rows up to the waist', { exact: true }).fill('48');
  await page.getByRole('button', { name: 'Undo change size of piece' }).click();
  await expect(page.getByLabel('Rows up to the waist', { exact: true })).toHaveValue('46');
});

test('offers an even width where the difference is odd, and shapes the odd stitch on a row of its own', async ({
  page,
  start,
}) => {
  const what = await openedSizes(page, start);
  const top = page.getByLabel('Stitches at the top', { exact: true });
  await expect(top).toHaveValue('124');
  await top.fill('125');
  // 14 a side in 126 rows is every 9th row; the odd one comes in the middle of the uppermost rows between.
  await expect(what).toContainText('increase 1 stitch at the right edge before row 122.');
  await expect(what.getByRole('button', { name: 'Use 124 stitches' })).toBeVisible();
  await expectAccessible(page);
  await what.getByRole('button', { name: 'Use 126 stitches' }).press('Enter');
  await expect(top).toHaveValue('126');
  await expect(top).toBeFocused();
  await expect(what.getByRole('button', { name: 'Use 124 stitches' })).toHaveCount(0);
});

test('offers the even width where the odd one is told of', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const what = page.getByRole('region', { name: 'What it is' });
  await what.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await page.getByLabel('Stitches at the top', { exact: true }).fill('125');
  const watch = await openFindings(page);
  await expect(watch).toContainText('differ by an odd number from those below');
  await watch.getByRole('button', { name: 'Use 124 stitches' }).press('Enter');
  await expect(announced(page)).toHaveText('124 stitches: both edges are shaped alike.');
  await expect(watch).not.toContainText('differ by an odd number');
  await page.getByRole('button', { name: 'Undo change size of piece' }).click();
  await expect(watch.getByRole('button', { name: 'Use 126 stitches' })).toBeVisible();
});

test('takes a sleeve in centimetres, at the gauge of a swatch', async ({ page, start }) => {
  const what = await openedSizes(page, start);
  await what.getByText('Gauge from a swatch').click();
  // 30 stitches on 100 mm, and 42 rows on 120 mm: 42 × 100 / 120 = 35.
  await page.getByLabel('Stitches counted').fill('30');
  await page.getByLabel('Rows counted').fill('42');
  await page.getByLabel('They measure up').fill('120');
  await expect(page.getByRole('textbox', { name: 'Stitches in 10 cm' })).toHaveValue('30');
  await expect(page.getByRole('textbox', { name: 'Rows in 10 cm' })).toHaveValue('35');
  await page.getByLabel('They measure up').fill('1');
  await expect(page.getByRole('alert')).toContainText('42 rows on 1 mm would be 4200 in 10 cm');
  await expect(page.getByRole('textbox', { name: 'Rows in 10 cm' })).toHaveValue('35');
  await page.getByLabel('They measure up').fill('120');
  await expect(page.getByRole('alert')).toHaveCount(0);
  // 26.5 cm at 3 stitches a cm is 79.5, so 80; 49.1 cm at 3.5 rows a cm is 171.85, so 172.
  await page.getByLabel('Stitches at the cast-on, in cm').fill('26.5');
  await expect(page.getByLabel('Stitches at the cast-on', { exact: true })).toHaveValue('80');
  await expect(what).toContainText('80 stitches: 26.7 cm, the nearest to 26.5 cm.');
  await page.getByLabel('Rows, in cm').fill('49.1');
  await expect(page.getByRole('textbox', { name: 'Rows', exact: true })).toHaveValue('172');
  await page.getByLabel('Lengths in').selectOption('inches');
  // 80 / 3 / 2.54 = 10.4987; 172 / 3.5 / 2.54 = 19.3476
  await expect(page.getByLabel('Stitches at the cast-on, in inches')).toHaveValue('10.5');
  await expect(page.getByLabel('Rows, in inches')).toHaveValue('19.35');
  // 4 in are 10.16 cm: 30 stitches in 10 cm are 30.48, and 30 in 4 in are 29.53 in 10 cm.
  await expect(page.getByLabel('Stitches in 4 in')).toHaveValue('30.48');
  await page.getByLabel('Stitches in 4 in').fill('30');
  await expect(page.getByRole('region', { name: 'Before you knit' })).toContainText(/Main yarn slate: [\d.]+ yd/);
  await page.getByRole('button', { name: 'Carriage, bed, limits' }).click();
  // 25 mm.
  await expect(page.getByLabel('Longest float in inches')).toHaveValue('0.98');
  await page.getByLabel('Lengths in').selectOption('centimetres');
  await expect(page.getByLabel('Stitches in 10 cm')).toHaveValue('29.53');
  await page.getByLabel('Lengths in').selectOption('inches');
  await expectAccessible(page);
});

test('keeps a width in centimetres when the gauge is typed after it, and stitches that were typed', async ({
  page,
  start,
}) => {
  const what = await openedSizes(page, start);
  const castOn = page.getByLabel('Stitches at the cast-on', { exact: true });
  const top = page.getByLabel('Stitches at the top', { exact: true });
  const gauge = page.getByRole('textbox', { name: 'Stitches in 10 cm' });
  // 35 cm at 28 stitches in 10 cm are 98, at 30 they are 105; 36.5 cm are 109.5, so 110.
  await page.getByLabel('Stitches at the cast-on, in cm').fill('35');
  await expect(castOn).toHaveValue('98');
  await gauge.fill('30');
  await expect(castOn).toHaveValue('105');
  await expect(page.getByLabel('Stitches at the cast-on, in cm')).toHaveValue('35');
  await expect(top).toHaveValue('124');
  await expect(what).not.toContainText('the nearest to');
  await page.getByLabel('Stitches at the cast-on, in cm').fill('36.5');
  await expect(what).toContainText('110 stitches: 36.7 cm, the nearest to 36.5 cm.');
  await page.getByRole('button', { name: 'Undo change size of piece' }).click();
  await expect(castOn).toHaveValue('105');
  await page.getByRole('button', { name: 'Undo change gauge' }).click();
  await expect(castOn).toHaveValue('98');
  await castOn.fill('104');
  await gauge.fill('30');
  await expect(gauge).toHaveValue('30');
  await expect(castOn).toHaveValue('104');
});
