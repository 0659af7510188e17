/** Beginning: the note on the sample, and new projects from a motif's size or a few measurements. */
import { announced, expect, expectAccessible, statusLine, test } from './app.ts';
import { appearAs } from './at-rest.ts';

test('the sample says that it is one, until it is closed or something else is opened', async ({ page, start }) => {
  await start();
  const note = page.getByRole('region', { name: 'Sample' });
  await expect(note).toContainText('This is a sample');
  await expectAccessible(page);
  await note.getByRole('button', { name: 'Close the note on the sample' }).click();
  await expect(note).toHaveCount(0);

  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Open the sample project' }).click();
  await expect(note).toBeVisible();
  await note.getByRole('button', { name: 'New motif' }).click();
  await page.getByRole('dialog', { name: 'New project' }).getByRole('button', { name: 'Create' }).click();
  await expect(note).toHaveCount(0);
});

test('a hemmed sleeve of so many centimetres is drawn while it is typed, and holds nothing else', async ({
  page,
  start,
}) => {
  await start();
  await page.getByRole('region', { name: 'Sample' }).getByRole('button', { name: 'New piece' }).click();
  const dialog = page.getByRole('dialog', { name: 'New project' });
  await expect(dialog.getByLabel('Piece', { exact: true })).toHaveValue('sleeve');
  await expect(dialog.getByRole('img', { name: 'The piece as measured' })).toBeVisible();
  await dialog.getByLabel('Round the wrist').fill('22');
  await dialog.getByLabel('Round the upper arm').fill('34');
  await dialog.getByLabel('Length', { exact: true }).fill('45');
  await dialog.getByLabel('Depth of a folded hem').fill('3');
  // 22 cm are 61.6 stitches and 34 cm 95.2 at 28 in 10 cm, and a stitch more in each seam; a hem of 3 cm hides 12 rows.
  await expect(dialog).toContainText('From 64 to 98 stitches over 192 rows');
  await expect(dialog).toContainText('The lowest 24 rows are the hem, folded in half.');
  for (const appearance of ['light', 'dark'] as const) {
    await appearAs(page, appearance);
    await expectAccessible(page);
  }
  await dialog.getByRole('button', { name: 'Create' }).click();

  await expect(page.getByRole('grid', { name: /^Sleeve|^sleeve/i })).toHaveAttribute('aria-rowcount', '192');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Untitled');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
  await expect(page.getByLabel('Copies in each group')).toHaveCount(0);
  await expect(announced(page)).toHaveText('Untitled is new.');
});

test('a motif of 24 × 20 by the keyboard alone', async ({ page, start }) => {
  await start('empty');
  await page.keyboard.press('Control+Shift+N');
  const dialog = page.getByRole('dialog', { name: 'New project' });
  const columns = dialog.getByLabel('Stitches of the motif');
  await expect(columns).toHaveValue('24');
  await dialog.getByLabel('Rows of the motif').fill('20');
  await expect(dialog).toContainText('24 stitches × 20 rows');
  await page.keyboard.press('Enter');
  const chart = page.getByRole('grid', { name: /^Chart of motif/ });
  await expect(chart).toHaveAttribute('aria-colcount', '24');
  await expect(chart).toHaveAttribute('aria-rowcount', '20');
  await expect(statusLine(page)).toBeVisible();
});

test('measures that cannot be shaped say why, and are not created', async ({ page, start }) => {
  await start('empty');
  await page.keyboard.press('Control+Shift+N');
  const dialog = page.getByRole('dialog', { name: 'New project' });
  await dialog.getByRole('radio', { name: 'A piece' }).check();
  await dialog.getByLabel('Round the upper arm').fill('120');
  await dialog.getByLabel('Length', { exact: true }).fill('5');
  await expect(dialog.getByRole('alert')).toContainText('rows');
  await expect(dialog.getByRole('button', { name: 'Create' })).toBeDisabled();
  await dialog.getByLabel('Length', { exact: true }).fill('50');
  await expect(dialog.getByRole('alert')).toHaveCount(0);
  await dialog.getByLabel('Measured in').selectOption('in');
  await expect(dialog.getByLabel('Length', { exact: true })).toHaveValue('19.69');
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  await expect(page.getByRole('grid', { name: /^Chart of motif/ })).toBeVisible();
});

/** What each step of the tour frames. */
const TOUR = [
  { title: 'Draw', bench: 'Motif', place: '[data-drawing]' },
  { title: 'See what it is', bench: 'Motif', place: 'aside' },
  { title: 'Place it', bench: 'Piece', place: '[data-drawing]' },
  { title: 'See what to mend', bench: 'Piece', place: 'aside' },
  { title: 'See it worn', bench: 'Piece', place: '[role="toolbar"]' },
  { title: 'Print, and knit', bench: 'Sheet', place: '[data-drawing]' },
];

test('the tour goes round the benches by the keyboard, and frames what each step is about', async ({ page, start }) => {
  await start();
  await page.keyboard.press('F1');
  const tour = page.getByRole('region', { name: 'Tour' });
  for (const [at, { title, bench, place }] of TOUR.entries()) {
    await expect(tour.getByRole('heading')).toHaveText(title);
    await expect(tour).toContainText(`${at + 1} of 6`);
    await expect(page.getByRole('button', { name: bench, exact: true })).toHaveAttribute('aria-current', 'page');
    await expect(page.locator('[data-toured]')).toHaveCount(1);
    await expect(page.locator(`${place}[data-toured]`)).toBeVisible();
    for (const appearance of ['light', 'dark'] as const) {
      await appearAs(page, appearance);
      await expectAccessible(page);
    }
    await page.keyboard.press('Enter');
  }
  await expect(tour).toHaveCount(0);
  await expect(page.locator('[data-toured]')).toHaveCount(0);
  await expect(page.getByRole('region', { name: 'Sample' })).toBeVisible();
  await expect(page.locator('[data-drawing]')).toBeFocused();
});

test('the tour is on the sample, lets everything be used, and is left at any step', async ({ page, start }) => {
  await start();
  await page.getByRole('region', { name: 'Sample' }).getByRole('button', { name: 'New motif' }).click();
  await page.getByRole('dialog', { name: 'New project' }).getByRole('button', { name: 'Create' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Untitled');
  await page.getByRole('button', { name: 'Commands' }).click();
  await page.getByRole('combobox', { name: 'Find a command' }).fill('tutorial');
  await page.keyboard.press('Enter');
  const tour = page.getByRole('region', { name: 'Tour' });
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Skerry sleeve');
  await tour.getByRole('button', { name: 'Next' }).click();
  await tour.getByRole('button', { name: 'Next' }).click();
  await expect(tour.getByRole('heading')).toHaveText('Place it');
  await page.getByLabel('Copies in each group').fill('1, 1');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Undo change copies' })).toBeEnabled();
  await tour.getByRole('button', { name: 'Back' }).click();
  await expect(tour.getByRole('heading')).toHaveText('See what it is');
  await page.keyboard.press('Escape');
  await expect(tour).toHaveCount(0);
});
