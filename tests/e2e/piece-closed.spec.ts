/** The piece closed into its tube. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { announced, expect, expectAccessible, statusLine, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

const NAME = 'twelve.walewright';

test('closes the piece, turns it by keys and by hand, and compares the gaps round it', async ({
  page,
  start,
  home,
}) => {
  await start();
  // Common practice, no source: the eye sees 13 / 24 / 13; a seam that takes a
  // stitch of each edge leaves 12 + 12 across it, as much as between the groups.
  const piece = { seamAllowance: { left: 1, right: 1 } };
  writeFileSync(join(home, NAME), textOf(twelveStitchMotif([3, 3], { piece })));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(NAME, 'Twelve');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  const flat = page.getByRole('grid');
  await flat.focus();
  await page.keyboard.press('c');

  const tube = page.getByRole('slider', { name: 'Piece, seamed, as worn' });
  const round = page.getByRole('region', { name: 'Round the seam' });
  await expect(tube).toBeFocused();
  await expect(round).toContainText('across the seam 24, between the groups 24; even all the way round');
  await expect(round).toContainText('Seam allowance: 1 stitch at each edge');
  for (const name of ['Show floats', 'Show wraps', 'Show the fabric as stitches', 'Show the piece as worn']) {
    await expect(page.getByRole('button', { name })).toBeDisabled();
  }
  await expectAccessible(page);

  // As worn the knit side is outside, and L lies left of the seam: turned to the right it comes to the front.
  await page.keyboard.press('ArrowRight');
  await expect(announced(page)).toContainText('Turned 5° to the right · needle L58 in front');
  await page.keyboard.press('PageDown');
  await expect(tube).toHaveAttribute('aria-valuenow', '50');
  await page.keyboard.press('End');
  await expect(announced(page)).toContainText('The seam at the back');
  await page.keyboard.press('Home');
  await expect(page.getByText('seen from outside; the seam in the middle')).toBeVisible();

  const box = await restingBox(tube);
  const [x, y] = [box.x + box.width / 2, box.y + box.height * 0.6];
  await page.mouse.move(x, y);
  await expect(statusLine(page)).toContainText('needle R59');
  await page.mouse.down();
  await page.mouse.move(x - 60, y, { steps: 4 });
  await page.mouse.up();
  await expect(page.getByText(/seen from outside; turned \d+° to the left/)).toBeVisible();
  await page.mouse.move(box.x + 4, y);
  await expect(statusLine(page)).toHaveText('');

  // To the right as worn is towards L; the numbers follow.
  await page.keyboard.press('.');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(round).toContainText(
    'across the seam 23, between the groups 25; the seam shows 2 fewer than between the groups',
  );
  await page.keyboard.press('Control+Z');
  await expect(round).toContainText('even all the way round');

  await appearAs(page, 'dark');
  await expectAccessible(page);
  await page.keyboard.press('c');
  await expect(flat).toBeFocused();
  await expect(round).toBeHidden();
  await expect(page.getByRole('button', { name: 'Show floats' })).toBeEnabled();
});
