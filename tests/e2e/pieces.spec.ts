/** Several pieces of one project: added, named, put in order, knitted twice, and looked at. */
import type { Page } from '@playwright/test';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';

const strip = (page: Page) => page.getByRole('toolbar', { name: 'Pieces' });
const pieces = (page: Page) => strip(page).getByRole('button');
const shown = (page: Page) => strip(page).locator('[aria-current]');
const firstPage = (page: Page) => page.getByRole('document').first();
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });

async function name(page: Page, name: string): Promise<void> {
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Name', { exact: true }).blur();
}

test('knits a back and two sleeves from nothing, by keyboard alone', async ({ page, start }) => {
  await start('empty');
  await page.getByRole('button', { name: 'Piece', exact: true }).press('Enter');
  await expect(pieces(page)).toHaveText(['piece']);
  await expect(page.getByRole('button', { name: 'Remove the piece' })).toBeDisabled();
  await page.getByText('Size, gauge, edges').press('Enter');
  await name(page, 'front');

  await page.getByRole('button', { name: 'Add a piece' }).press('Enter');
  await expect(announced(page)).toHaveText('Looking at piece 2.');
  await name(page, 'sleeve');
  await page.getByRole('grid').focus();
  await page.keyboard.press('Shift+N');
  await expect(shown(page)).toHaveText('piece 3');
  // Two of one name could not be told apart.
  await page.getByLabel('Name', { exact: true }).fill('front');
  await expect(page.getByText('Another piece is called “front” already.')).toBeVisible();
  await expect(pieces(page)).toHaveText(['front', 'sleeve', 'piece 3']);
  await name(page, 'back');
  await expect(pieces(page)).toHaveText(['front', 'sleeve', 'back']);

  await page.getByRole('button', { name: 'Move the piece left in the list' }).press('Enter');
  await expect(pieces(page)).toHaveText(['front', 'back', 'sleeve']);
  await expect(announced(page)).toHaveText('back is piece 2 of 3.');
  // Arrow keys go along the strip; Enter looks at what they came to.
  await shown(page).focus();
  await page.keyboard.press('ArrowRight');
  await expect(pieces(page).nth(2)).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await expect(pieces(page).first()).toBeFocused();
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await expect(shown(page)).toHaveText('sleeve');
  await page.getByLabel('Knit how many').fill('2');
  await expect(shown(page)).toHaveText(/^sleeve\s*× 2$/);
  await expect(page.getByText('Knit 2 of this piece. All figures are for one.')).toBeVisible();
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);

  await page.getByRole('grid').focus();
  await page.keyboard.press('n');
  await expect(shown(page)).toHaveText('front');
  await expect(announced(page)).toHaveText('Looking at front.');
  // What is taken back is shown, whichever piece was looked at.
  await undo(page).press('Enter');
  await expect(shown(page)).toHaveText('sleeve');
  await page.getByRole('button', { name: 'Remove the piece' }).press('Enter');
  await expect(announced(page)).toHaveText('sleeve is removed; undo brings it back. Looking at back.');
  await expect(pieces(page)).toHaveText(['front', 'back']);
  await page.getByRole('grid').focus();
  await page.keyboard.press('p');
  await expect(shown(page)).toHaveText('front');
  await expect(undo(page)).toHaveAccessibleName('Undo remove the piece');
  await undo(page).press('Enter');
  await expect(shown(page)).toHaveText('sleeve');
  await page.getByRole('button', { name: 'Duplicate the piece' }).press('Enter');
  await expect(pieces(page)).toHaveText(['front', 'back', 'sleeve', 'sleeve copy']);
});

test('looking at other pieces leaves a project saved, and the sheet is of the one looked at', async ({
  page,
  start,
}) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByRole('button', { name: 'Add a piece' }).click();
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();

  await strip(page).getByRole('button', { name: 'sleeve' }).click();
  await expect(page.getByRole('heading', { name: 'Sleeve, on the needles' })).toBeVisible();
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await expect(page.getByLabel('Piece', { exact: true })).toHaveValue('piece-1');
  await expect(firstPage(page)).toContainText('Sleeve');
  await page.getByLabel('Piece', { exact: true }).selectOption('piece 2');
  await expect(firstPage(page)).toContainText('Piece 2');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(shown(page)).toHaveText('piece 2');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
});

test('the piece that is looked at is seen in a list that is longer than its room', async ({ page, start }) => {
  await start('empty');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  for (let piece = 2; piece <= 16; piece++) await page.keyboard.press('Shift+N');
  await expect(pieces(page)).toHaveCount(16);
  await expect(shown(page)).toHaveText('piece 16');
  await expect(pieces(page).first()).not.toBeInViewport();
  await expect(shown(page)).toBeInViewport({ ratio: 1 });
  await page.keyboard.press('n');
  await expect(shown(page)).toHaveText('piece');
  await expect(shown(page)).toBeInViewport({ ratio: 1 });
  await page.keyboard.press('p');
  await expect(shown(page)).toHaveText('piece 16');
  // With a longer name its end would be out of sight.
  await page.getByText('Size, gauge, edges').click();
  await name(page, 'left front with the buttonholes');
  await expect(shown(page)).toHaveText('left front with the buttonholes');
  await expect(shown(page)).toBeInViewport({ ratio: 1 });
});
