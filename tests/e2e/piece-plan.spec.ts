/** A sleeve planned from nothing, as a designer goes about it. */
import type { Page } from '@playwright/test';
import { announced, expect, statusLine, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { Chart } from './chart.ts';

const meaning = (page: Page) => page.getByRole('region', { name: 'What it is' });

/** A box 6 wide and 6 tall on 8 columns, so that 2 blank ones part the copies. All by keyboard. */
async function drawBox(page: Page): Promise<void> {
  await page.getByRole('textbox', { name: 'Stitches' }).fill('8');
  await page.getByRole('textbox', { name: 'Rows' }).fill('6');
  await new Chart(page).grid.focus();
  await page.keyboard.press('r');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Space');
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Space');
}

test('plans a tapered sleeve with three groups from nothing', async ({ page, start }) => {
  await start('empty');
  await drawBox(page);
  await expect
    .poll(() => new Chart(page).shown())
    .toEqual(['######..', ...Array<string>(4).fill('#....#..'), '######..']);

  await page.keyboard.press('2');
  await meaning(page).getByRole('button', { name: 'Size, gauge, edges' }).click();
  await meaning(page).getByLabel('Shape', { exact: true }).selectOption('tapered');
  // A hobby article's sleeve at 28 × 40 in 10 cm, computed again: 26 cm is 72 stitches, 56 cm 156 (the even number
  // below) and 49 cm 196 rows; increases stop 20 rows early, so 42 a side in 176 rows: every 4th row 34 times, every
  // 5th row 8 times.
  await meaning(page).getByLabel('Stitches at the cast-on', { exact: true }).fill('72');
  await meaning(page).getByLabel('Stitches at the top', { exact: true }).fill('156');
  await meaning(page).getByLabel('Rows, in cm').fill('49');
  await meaning(page)
    .getByLabel(/^Rows without shaping/)
    .first()
    .fill('20');
  await expect(meaning(page)).toContainText('From 72 to 156 stitches over 196 rows');
  await expect(meaning(page)).toContainText(
    'Increase 1 stitch at each edge every 4th row from row 4, 34 times, then every 5th row from row 141, 8 times.',
  );

  await page.getByLabel('Copies in each group').fill('1, 2, 1');
  // 196 − 6 = 190 rows are left, 95 below. By row 96 there are 24 increases at each edge: 120 stitches, L60–R60.
  // Worn on the knit side the 2 blank columns lie left of each copy. Seen: 6, 14 and 6, so 94 are left, and with the
  // spaces alike on both sides a margin and a gap make 47. Margin 16, gap 31: the seam shows 32, one more than a gap.
  // Figures start 16, 53 and 98 needles from L60; their blocks 2 before: L46, L9, R37.
  await expect(meaning(page)).toContainText('The groups start at needles L46, L9 and R37, on rows 96–101.');

  // The first stitch of the first group is under the cursor; two needles to the right it stands 18 from the edge.
  const cell = page.getByRole('gridcell');
  await expect(cell).toHaveAccessibleName(/needle L46/);
  const box = await restingBox(cell);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 3 * box.width, y, { steps: 3 });
  await page.mouse.move(x + 2 * box.width, y, { steps: 3 });
  await expect(statusLine(page)).toContainText('spaces on row 96 from L to R 18, 29, 31, 16');
  await expect(statusLine(page)).toContainText('across the seam 34');
  await page.mouse.up();
  await expect(meaning(page)).toContainText('L44, L9 and R37');
  await page.keyboard.press('Control+Z');
  await expect(meaning(page)).toContainText('L46, L9 and R37');

  await page.getByRole('grid').focus();
  await page.keyboard.press('k');
  await expect(announced(page)).toContainText('Needles L46, L9 and R37 kept');
  await page.keyboard.press('t');
  await expect(page.getByRole('heading', { name: /as worn$/ })).toBeVisible();
  await page.keyboard.press('c');
  // Row 100 has the 25th increase: 122 stitches, so one more at each edge.
  await expect(page.getByRole('region', { name: 'Round the seam' })).toContainText(
    'Rows 96–101: across the seam 32, between the groups 31; the seam shows 1 more than between the groups. By row 100 shaping makes the gap across the seam 34.',
  );
});
