/** Groups moved on the piece, by pointer and by keyboard. */
import type { Page } from '@playwright/test';
import { announced, expect, statusLine, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { openTwelve } from './piece-bench.ts';

const meaning = (page: Page) => page.getByRole('region', { name: 'What it is' });

/** The middle of L48 on the page, the size of a stitch, and which way L lies. */
async function firstStitch(page: Page): Promise<{ x: number; y: number; width: number; height: number }> {
  const cell = page.getByRole('gridcell');
  await expect(cell).toHaveAccessibleName(/needle L48/);
  const box = await restingBox(cell);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2, width: box.width, height: box.height };
}

/** Takes the group at L48 and carries it by stitches as seen and rows up, without letting go. */
async function drag(page: Page, columns: number, rows: number): Promise<void> {
  const at = await firstStitch(page);
  await page.mouse.move(at.x, at.y - at.height);
  await page.mouse.down();
  await page.mouse.move(at.x + (columns * at.width) / 2, at.y - at.height, { steps: 3 });
  await page.mouse.move(at.x + columns * at.width, at.y - (rows + 1) * at.height, { steps: 3 });
}

test('carries a group from needle to needle, seen from either side', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  await drag(page, 3, 2);
  // Three to the right: L45. The eye sees 13 + 3 = 16, 24 − 3 = 21 and 13.
  await expect(statusLine(page)).toContainText('Group 1 · needles L45–L10');
  await expect(statusLine(page)).toContainText('spaces from L to R 16, 21, 13');
  await expect(statusLine(page)).toContainText('across the seam 29');
  // Cards and sentences follow what is in the hand; nothing of the project has changed.
  await expect(meaning(page)).toContainText('L45 and R12');
  const taken = page.getByRole('radiogroup', { name: 'Possible placings' }).getByRole('radio', { checked: true });
  await expect(taken).toHaveAccessibleName(
    'Spaces 16, 21, 13. Placed by hand, the two sides differing by 3 stitches: 16 stitches at the left edge and 13 at the right, 21 between; across the seam 29; the seam shows 8 more than between the groups.',
  );
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(meaning(page)).toContainText('L48 and R12');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

  await drag(page, -200, 0);
  await expect(announced(page)).toContainText('Group 1 stops at the edge of the piece');
  await page.mouse.up();
  await expect(meaning(page)).toContainText('L60 and R12');
  await expect(page.getByLabel('Spacing rule')).toHaveValue('by-hand');
  await page.getByRole('button', { name: 'Undo move a group' }).click();
  await expect(meaning(page)).toContainText('L48 and R12');
  await expect(page.getByLabel('Spacing rule')).toHaveValue('seam');

  // As worn, L stands at the right: three to the right as seen is three towards the left edge.
  await page.getByRole('button', { name: 'Show the piece as worn' }).click();
  await drag(page, 3, -1);
  await page.mouse.up();
  await expect(meaning(page)).toContainText('L51 and R12');
  await page.getByRole('button', { name: 'Undo move a group' }).click();
  await expect(meaning(page)).toContainText('L48 and R12');
});

test('chooses and moves a group by keyboard alone: each press is a step of undo, a key held down is one', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  await page.getByRole('grid').focus();
  await page.keyboard.press('.');
  await expect(announced(page)).toContainText('Group 1 · needles L48–L13');
  await page.keyboard.press('.');
  await expect(announced(page)).toContainText('Group 2 · needles R12–R47');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowUp');
  await expect(announced(page)).toContainText('Group 2 · needles R14–R49');
  await expect(meaning(page)).toContainText('L48 and R14');
  await page.keyboard.press('t');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(meaning(page)).toContainText('L48 and R13');
  // Four presses, four steps.
  const undo = page.getByRole('button', { name: /^Undo/ });
  for (const at of ['L48 and R14', 'L48 and R14', 'L48 and R13', 'L48 and R12']) {
    await expect(undo).toHaveAccessibleName('Undo move a group');
    await page.keyboard.press('Control+Z');
    await expect(meaning(page)).toContainText(at);
  }
  await expect(undo).toBeDisabled();

  // Down five times without a key up between: a key that is held. As worn, right is towards L.
  await page.keyboard.down('Shift');
  for (let times = 0; times < 5; times++) await page.keyboard.down('ArrowRight');
  await page.keyboard.up('ArrowRight');
  await expect(meaning(page)).toContainText('L48 and R7');
  // The same key again is another press.
  await page.keyboard.press('ArrowRight');
  await page.keyboard.up('Shift');
  await expect(meaning(page)).toContainText('L48 and R6');
  await page.keyboard.press('Control+Z');
  await expect(meaning(page)).toContainText('L48 and R7');
  await page.keyboard.press('Control+Z');
  await expect(meaning(page)).toContainText('L48 and R12');
  await expect(undo).toBeDisabled();
  await expect(page.getByLabel('Spacing rule')).toHaveValue('seam');

  // Kept, they stay where four stitches more would move them; given back, they go with the rule.
  await page.keyboard.press('k');
  await expect(announced(page)).toContainText('Needles L48 and R12 kept');
  await expect(page.getByLabel('Spacing rule')).toHaveValue('by-hand');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await page.getByLabel('Stitches', { exact: true }).fill('124');
  await expect(meaning(page)).toContainText('124 stitches');
  await expect(meaning(page)).toContainText('L48 and R12');
  const keep = page.getByRole('button', { name: 'Keep these needles' });
  const back = page.getByRole('button', { name: 'Go back to: seam continues' });
  await expect(keep).toBeDisabled();
  await expect(back).toHaveAccessibleDescription(
    /^By hand: needles L48 and R12 stay .*“Seam continues” does not space/,
  );
  await back.focus();
  await page.keyboard.press('Enter');
  await expect(meaning(page)).not.toContainText('L48 and R12');
  // Both stand where they stood, and say what keeping would give up.
  await expect(back).toBeFocused();
  await expect(back).toBeDisabled();
  await expect(keep).toBeEnabled();
  await expect(keep).toHaveAccessibleDescription(/^Kept, needles L\d+ and R\d+ stay .* Given up: “Seam continues”/);
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Spacing rule')).toHaveValue('seam');
});
