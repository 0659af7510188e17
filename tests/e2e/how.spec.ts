/** Beside a computed number: how it comes about, on demand. */
import type { Locator, Page } from '@playwright/test';
import { expect, expectAccessible, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { openTwelve } from './piece-bench.ts';

const mark = (page: Page | Locator, of: string): Locator =>
  page.getByRole('button', { name: `How it comes about: ${of}`, exact: true });
const card = (page: Page, of: string): Locator =>
  page.getByRole('group', { name: `How it comes about: ${of}`, exact: true });

/** Opens it by keyboard, reads it, and closes it by Escape; the keyboard is on the mark before and after. */
async function read(page: Page, of: string, says: readonly (string | RegExp)[]): Promise<void> {
  await mark(page, of).press('Enter');
  await expect(card(page, of).getByRole('listitem')).toHaveText(says);
  await page.keyboard.press('Escape');
  await expect(card(page, of)).toBeHidden();
  await expect(mark(page, of)).toBeFocused();
}

test('says on the Piece bench how each number comes about, and moves nothing for it', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  // Common practice, no source: 120 stitches, two figures of 35; the eye sees 13, 24, 13 with the groups on L48 and R12.
  await read(page, 'spaces', [
    'Row 30 has 120 stitches; the figures take 70: 50 are left.',
    'At each edge: 13, for 50 stitches left ÷ 4 = 12.5; needles are whole.',
    'Between: 24, for 50 stitches left ÷ 2 = 25; needles are whole.',
  ]);
  await read(page, 'left-hand needles', [
    'L48: row 30 begins at L60, and 12 plain needles come before it; with 1 blank column the space is 13.',
    'R12: the group before ends at L13, and 23 plain needles come before it; with 1 blank column the space is 24.',
  ]);
  await read(page, 'rows', [
    'In the middle of rows 1–60, which are 60: less 3 of the pattern, 57 are left, 29 below and 28 above.',
    'The needles of row 30 are chosen while row 29 is knitted. Before that row the counter reads 30 − 2 = 28.',
  ]);
  await read(page, 'set-up row', [/the counter reads 30 − 2 = 28\.$/]);
  await read(page, 'yarn slate', [
    /stitches of 13 mm: /,
    /^Together .* with 10 % more to wind off/,
    /10 × √\(19 ÷ 11\.2\)/,
    /Munden/,
  ]);
  await page.getByRole('button', { name: 'Carriage, bed, limits' }).click();
  await read(page, 'longest float', [/^25 mm hold 7 whole stitches .* The smaller counts: 5\.$/]);

  // Over the page: what stands around it stays where it is, and a press elsewhere closes it.
  const taken = page.getByRole('radiogroup', { name: 'Possible placings' }).locator('label').first();
  await taken.scrollIntoViewIfNeeded();
  const before = await restingBox(taken);
  await mark(page, 'spaces').click();
  await expect(card(page, 'spaces')).toBeVisible();
  expect(await restingBox(taken)).toEqual(before);
  await expectAccessible(page);
  await page.getByRole('grid').click();
  await expect(card(page, 'spaces')).toBeHidden();
});

test('says on the Motif bench how the repeat comes about, once it is asked for', async ({ page, start }) => {
  await start();
  await mark(page, 'repeat').press('Enter');
  await expect(card(page, 'repeat').getByRole('listitem')).toHaveText([/^Across: /, /^Up: /]);
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect(card(page, 'repeat')).toBeHidden();
  await expect(mark(page, 'repeat')).toBeFocused();
  await read(page, 'repeat', [/^Across: /, /^Up: /]);
});

test('says of a size how its numbers are proposed', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [1]);
  await page.getByRole('button', { name: 'Show all sizes' }).click();
  const sizes = page.getByRole('dialog');
  await sizes.getByRole('button', { name: 'Add a size' }).click();
  // Of one size alone nothing is worked out.
  await expect(mark(sizes, 'proposed numbers')).toHaveCount(0);
  await sizes.getByLabel('Stitches, size 2', { exact: true }).fill('130');
  await sizes.getByRole('button', { name: 'Add size 2' }).click();
  await sizes.getByRole('button', { name: 'Add a size' }).click();
  await read(page, 'proposed numbers', ['Stitches: 140 = 130 + (130 − 120).', 'Rows: 60 = 60 + (60 − 60).']);
  await expect(sizes.getByRole('button', { name: 'Add size 3' })).toBeVisible();
});
