/** A piece filled with an all-over pattern, and how it meets in the seam. */
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { openFindings } from './piece-bench.ts';

test('fills a sleeve, reads how it meets in the seam, and takes what makes it match', async ({ page, start }) => {
  await start('sample');
  await page.keyboard.press('2');
  // Lighthouses of 14 stitches stand on rows 25–42 of 140; the seam takes a stitch at each edge.
  await page.keyboard.press('Shift+F');
  await expect(announced(page)).toHaveText('The all-over takes rows 43–140.');
  const panel = page.getByRole('region', { name: 'All-over pattern', exact: true });
  await expect(panel).toContainText('All-over 1, rows 43–140: on row 43 copies of 14 stitches start at L49, L35');
  // 96 stitches, 1 more at each edge every 9th row: 104 on row 43, of which 102 are seen, 7 × 14 + 4.
  await expect(panel.getByRole('listitem').first()).toHaveText('Rows 43–44: 4 stitches too many');

  await panel.getByRole('button', { name: 'Rows, edges, how it lies' }).click();
  await panel.getByLabel('First row of the all-over').fill('40');
  await expect(page.getByRole('alert')).toContainText(
    'All-over 1 and pattern band 1 want the same needles on rows 40–42.',
  );
  await panel.getByLabel('First row of the all-over').fill('46');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await panel.getByLabel('Kept plain, left edge').fill('3');
  await panel.getByLabel('Kept plain, right edge').fill('2');
  // The seam takes one stitch of each.
  await expect(panel).toContainText('Its edges are plain, so nothing has to match in the seam.');
  await page.getByRole('button', { name: 'Undo change plain edges of an all-over' }).click();
  await page.getByRole('button', { name: 'Undo change plain edges of an all-over' }).click();
  await panel.getByLabel('Copies cut by an edge').selectOption('left out');
  await expect(panel).toContainText('left out.');
  await page.getByRole('button', { name: 'Undo choose what becomes of cut copies' }).click();

  // Straight from row 46 on: 104 stitches, 102 seen.
  const what = page.getByRole('region', { name: 'What it is' });
  await what.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await what.getByLabel('Shape', { exact: true }).selectOption('rectangle');
  await what.getByRole('textbox', { name: 'Stitches', exact: true }).fill('104');
  // Lighthouse and gulls are the mirror image of themselves about a column, so on an odd row that has it in the
  // middle the edges are too, which is no match. Half a copy of step leaves the axes where they are.
  await expect(panel).toContainText('Every row would match with:');
  await panel.getByLabel('Step each row of copies by').fill('7');
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
  await what.getByRole('textbox', { name: 'Stitches', exact: true }).fill('103');
  await expect(panel).toContainText('It does not match across the seam: a mirror image on all 95 rows.');
  // 103 less the two that the seam takes are 7 × 14 + 3.
  await panel.getByRole('button', { name: '3 stitches fewer, 100 at the cast-on' }).click();
  await expect(announced(page)).toHaveText('Every row matches across the seam now.');
  await expect(panel).toContainText('It matches across the seam on all 95 rows.');
  await page.getByRole('button', { name: 'Undo make the pattern match across the seam' }).click();
  await expect(panel).toContainText('It does not match across the seam');

  // By keyboard: the pattern moves as it is shown, and the fill goes.
  await page.getByRole('gridcell').focus();
  await page.keyboard.press('}');
  await expect(panel.getByLabel('Moved from there by')).toHaveValue('1');
  await page.keyboard.press('Shift+Delete');
  await expect(announced(page)).toHaveText('Removed.');
  await expect(panel).toContainText('No pattern runs over the whole width.');
});

test('puts an all-over in place of what stands in its rows, and undo brings that back in one step', async ({
  page,
  start,
}) => {
  await start('sample');
  await page.keyboard.press('2');
  const panel = page.getByRole('region', { name: 'All-over pattern', exact: true });
  await expect(panel).toContainText('On rows 43–140, where nothing stands.');
  await expect(panel).toContainText('On rows 2–140; pattern band 1 goes.');
  await panel.getByRole('button', { name: 'all over, in place of what is there' }).click();
  await expect(panel).toContainText('All-over 1, rows 2–140');
  await expect(announced(page)).toHaveText('The all-over takes rows 2–140; pattern band 1 is gone.');
  // The panel is shorter by the groups; its head is in view all the same, with the keyboard.
  await expect(panel.getByRole('heading')).toBeInViewport();
  await expect(panel.getByRole('button', { name: 'Rows, edges, how it lies' })).toBeFocused();
  const groups = page.getByRole('region', { name: 'Groups', exact: true });
  await expect(groups).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo put an all-over in place of others' }).click();
  await expect(groups.getByLabel('Copies in each group')).toHaveValue('2, 2');
  await expect(panel).toContainText('No pattern runs over the whole width.');
  // Asked for on the drawing, it leaves the keyboard there.
  await page.getByRole('grid').focus();
  await page.keyboard.press('Shift+F');
  await expect(panel).toContainText('All-over 1, rows 43–140');
  await expect(panel.getByRole('heading')).toBeInViewport();
  await expect(page.getByRole('grid')).toBeFocused();
});

test('takes a pattern band away that an all-over was made to meet', async ({ page, start }) => {
  await start('sample');
  await page.keyboard.press('2');
  await page.keyboard.press('Shift+F');
  const panel = page.getByRole('region', { name: 'All-over pattern', exact: true });
  await panel.getByRole('button', { name: 'Rows, edges, how it lies' }).click();
  await panel.getByLabel('First row of the all-over').fill('20');
  await page.getByRole('button', { name: 'Remove pattern band 1' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(panel).toContainText('All-over 1, rows 20–140');
  await page.getByRole('button', { name: 'Undo remove a pattern band' }).click();
  await expect(page.getByRole('alert')).toContainText('want the same needles');
});

test('says where end needles show contrast at an edge, and lets the seam take it', async ({ page, start }) => {
  await start('sample');
  await page.keyboard.press('2');
  await page.keyboard.press('Shift+F');
  await expect(announced(page)).toHaveText('The all-over takes rows 43–140.');
  const letTake = page.getByRole('button', { name: 'Set a seam allowance of 1 stitch' });
  await expect(letTake).toHaveCount(0);
  const what = page.getByRole('region', { name: 'What it is' });
  await what.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await what.getByRole('textbox', { name: 'Seam allowance, left edge', exact: true }).fill('0');
  const found = await openFindings(page);
  await expect(found).toContainText('so it shows as a line along the edge');
  await letTake.press('Enter');
  await expect(announced(page)).toHaveText('The seam allowance is 1 stitch at each edge.');
  await expect(letTake).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo change seam allowance' }).click();
  await expect(letTake).toBeVisible();
});
