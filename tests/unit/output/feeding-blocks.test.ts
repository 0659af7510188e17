import { describe, expect, it } from 'vitest';
import { placementSheet, sheetFacts, type SheetElement } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { textOf } from '@shared/words/index.ts';
import { TEST_DAY } from '../../day.ts';
import { byHand } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';

/** The cells of the table of yarns in feeders, as they are read; null where the sheet has none. */
function feedingOn(project: ProjectAt): string[][] | null {
  const plan = makePlan(pieceIn(project));
  const { pages } = placementSheet(sheetFacts(project), plan, { paper: 'a4', date: TEST_DAY });
  const table = pages
    .flatMap(({ elements }) => elements)
    .find(
      (element): element is Extract<SheetElement, { role: 'table' }> =>
        element.role === 'table' && element.title === 'Which yarn is where',
    );
  if (!table) return null;
  return table.rows.map(({ cells }) =>
    cells.map((items) => items.flatMap((item) => (item.kind === 'text' ? [textOf(item.spans)] : [])).join(' ')),
  );
}

describe('the sheet', () => {
  it('has which yarn is in which feeder, and what is laid by hand', () => {
    // common practice, no source: one pass feeds two yarns. The second row of the pattern has two contrasts.
    const project = projectWith({ motif: ['XO.', 'X..'], copies: [1], stitches: 9, rows: 5, band: byHand(-1) });
    expect(feedingOn(project)).toEqual([
      ['Rows', 'Feeder 1', 'Feeder 2', 'By hand'],
      ['1–2', 'slate', '–', '–'],
      ['3', 'slate', 'chalk', '–'],
      ['4', 'slate', '–', 'chalk and kelp'],
      ['5', 'slate', '–', '–'],
    ]);
  });

  it('has no such table where all rows are fed alike', () => {
    const plain = projectWith({ motif: ['X..'], copies: [1], stitches: 9, rows: 5, band: byHand(-1) });
    expect(feedingOn({ ...plain, patterns: [] })).toBeNull();
  });
});
