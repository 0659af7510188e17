/** Anchors on the Piece bench: wished for in the form, one forbidden by key, one by pointer, taken back. */
import type { Page } from '@playwright/test';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import type { AnchorByHand } from '@shared/pattern/index.ts';
import { pieceIn, projectAt, sampleProject } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { settled } from '../written-projects.ts';
import { expect, test } from './app.ts';
import { placeOf } from './piece-bench.ts';

const text = words.piece.form;
const ANCHOR = 'anchor stitch';

function planWith(byHand: readonly AnchorByHand[]): Plan {
  const sample = projectAt(sampleProject());
  const anchors = { longest: 5, isBehindFigure: false, byHand };
  return makePlan(pieceIn(settled(sample, { patterns: sample.patterns.map((pattern) => ({ ...pattern, anchors })) })));
}

async function lookAt(page: Page, needle: number, row: number): Promise<void> {
  const { x, y } = await placeOf(page, needle, row);
  await page.mouse.click(x, y);
}

test('a band breaks its long floats; a stitch is kept free by key, and let go', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByRole('button', { name: 'Rows, copies, balls' }).click();
  const field = page.getByLabel(text.anchorsLongest);
  await field.fill('5');
  await field.press('Enter');

  const plan = planWith([]);
  const row = plan.rows.find(({ anchors }) => anchors.length > 0);
  const needle = row?.anchors[0];
  if (!row || needle === undefined) throw new Error('The sample has long floats');
  const cell = page.getByRole('gridcell');
  await lookAt(page, needle, row.row);
  await expect(cell).toHaveAttribute('aria-label', new RegExp(ANCHOR));

  await page.keyboard.press('a');
  await expect(page.getByText(text.anchorCells(1))).toBeVisible();
  await expect(cell).not.toHaveAttribute('aria-label', new RegExp(ANCHOR));

  await page.keyboard.press('Control+z');
  await expect(cell).toHaveAttribute('aria-label', new RegExp(ANCHOR));

  // All of it is one wish: without it the floats are as they were.
  await field.fill('0');
  await field.press('Enter');
  await expect(cell).not.toHaveAttribute('aria-label', new RegExp(ANCHOR));
});
