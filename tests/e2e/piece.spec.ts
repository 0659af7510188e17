/** The Piece bench: describing a piece, and seeing what to watch. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gridFromText } from '@shared/grid/index.ts';
import { expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { openFindings, NAME, openTwelve, picture } from './piece-bench.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

test('keeps the project while a number makes no sense, and says what it takes', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  const rows = page.getByRole('textbox', { name: 'Rows', exact: true });
  for (const text of ['0', '-4', '12.5', 'many', '5000', '']) {
    await rows.fill(text);
    await expect(rows).toHaveAttribute('aria-invalid', 'true');
    await expect(page.getByRole('alert')).toHaveText('A whole number from 1 to 4000.');
  }
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('over 140 rows');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
  await rows.blur();
  await expect(rows).toHaveValue('140');

  const copies = page.getByLabel('Copies in each group');
  await copies.fill('2, two');
  await expect(page.getByRole('alert')).toContainText('Write how many copies each group has');
  await copies.blur();
  await expect(copies).toHaveValue('2, 2');
});

test('keeps the piece on the stage when the groups are wider than it, and says what to do', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await expect(page.getByRole('heading', { name: 'Sleeve, on the needles' })).toBeVisible();
  const copies = page.getByLabel('Copies in each group');
  // The stitch under the keyboard is drawn only while the piece has it.
  await copies.focus();
  const placed = await picture(page);
  await copies.fill('4, 4');
  // 8 copies of 14 stitches; on row 25 the sleeve has 96 + 2 × 2 = 100.
  const problem = page.getByRole('alert');
  await expect(problem).toContainText('112');
  await expect(problem).toContainText('Use fewer copies, fewer groups, or a wider piece.');
  await expect(page.getByText('The plain piece is shown.')).toBeVisible();
  await expect(page.getByRole('grid')).toHaveAccessibleName('sleeve, 124 stitches × 140 rows, as on the needles');
  await expect.poll(() => picture(page)).not.toBe(placed);
  await expectAccessible(page);

  await copies.fill('2, 2');
  await expect(problem).toHaveCount(0);
  await copies.blur();
  await expect.poll(() => picture(page)).toBe(placed);
});

test('describes a folded hem and sets up for it', async ({ page, start, home }) => {
  await start();
  // Common practice, no source: hem of 100 rows folded in half, 31 rows of motif, pattern on rows 61–91, set up at 59.
  const motif = Array.from({ length: 31 }, () => '.###########');
  const project = twelveStitchMotif([3]);
  const tall = { ...project, motifs: [{ ...project.motifs[0], grid: gridFromText(motif, '.#') }] } as typeof project;
  writeFileSync(join(home, NAME), textOf(tall));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(NAME, 'Twelve');
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await page.getByRole('textbox', { name: 'Rows', exact: true }).fill('100');
  await page.getByLabel(/^Rows of the hem(?!, )/).fill('100');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('on rows 61–91');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText(
    '50 of facing and 50 outside: it folds after row 50',
  );
  await expect(page.getByRole('region', { name: 'Before you knit' })).toContainText(
    'Counter reads 59: Set pattern band 1 for row 61: ',
  );
  await page.getByLabel('Turning row').selectOption('knitted looser');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText(
    'row 50, the last of the facing, is the turning row',
  );

  // A section above the hem, of fabric that takes more stitches to the width.
  await page.getByRole('textbox', { name: 'Rows', exact: true }).fill('130');
  await page.getByText('Sections above the hem').click();
  await page.getByRole('button', { name: 'Add a section' }).click();
  const section = page.getByRole('group', { name: 'Section 1 from the bottom' });
  await section.getByLabel('Name').fill('gulls');
  await section.getByRole('switch', { name: 'Own gauge' }).check();
  // 20 rows at 50 rows in 10 cm: 4 cm.
  await section.getByRole('textbox', { name: 'Rows in 10 cm' }).fill('50');
  await expect(section.getByLabel('Rows, in cm')).toHaveValue('4');
  await page.getByRole('button', { name: 'Undo change gauge of section' }).click();
  await expect(section.getByLabel('Rows, in cm')).toHaveValue('5');
});

test('takes a remedy, and says what it does before it is taken', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const before = await openFindings(page);
  await expect(before).toContainText('floats over up to 25 stitches');
  await expect(before).toContainText('It takes 2 balls and');
  await before.getByRole('button', { name: 'Give each group its own ball' }).click();
  await expect(before).not.toContainText('up to 25 stitches');
  await openFindings(page, false);
  await page.getByRole('button', { name: 'Rows, copies, balls' }).click();
  await expect(page.getByRole('switch', { name: 'A ball for each group' })).toBeChecked();
  await page.getByRole('button', { name: 'Undo change balls' }).click();
  await openFindings(page);
  await expect(before).toContainText('floats over up to 25 stitches');
});

test('warns where an infant could be hurt', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const before = page.getByRole('region', { name: 'Before you knit' });
  await expect(before).toContainText('Hooks and latches are sharp');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await page.getByRole('switch', { name: /For an infant/ }).check();
  await expect(await openFindings(page)).toContainText('fingers and toes');
});

test('makes one step of undo of a number that is stepped up', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  const rows = page.getByRole('textbox', { name: 'Rows', exact: true });
  await rows.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowUp');
  await expect(rows).toHaveValue('143');
  await rows.blur();
  await page.getByRole('button', { name: 'Undo change size of piece' }).click();
  await expect(rows).toHaveValue('140');
  await expect(page.getByText('not in a file yet')).toBeVisible();
});

test('has nothing that axe finds wrong, folded and unfolded, light and dark', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const inBoth = async (): Promise<void> => {
    for (const appearance of ['light', 'dark'] as const) {
      await appearAs(page, appearance);
      await expectAccessible(page);
    }
  };
  await inBoth();
  for (const name of ['Size, gauge, edges', 'Rows, copies, balls', 'Carriage, bed, limits', '6 more']) {
    await page.getByRole('button', { name }).click();
  }
  await page.getByText('Better fits').click();
  await page.getByLabel('Copies in each group').fill('x');
  await inBoth();
});
