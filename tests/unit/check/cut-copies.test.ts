/** Copies that shaping cuts: which are counted, and which are left out. */
import { describe, expect, it } from 'vitest';
import { projectWith } from '../fabric/pieces.ts';
import { checkedPlan, onlyFindings as only } from './found.ts';

describe('copies cut by shaping', () => {
  const NARROWING = { kind: 'tapered' as const, stitches: 12, stitchesAtTop: 4, rows: 9, straightRows: 1 };

  it('are counted with the rows on which they lose figure', () => {
    // One needle fewer at each edge on rows 2, 4, 6, 8. Copies of 3 on L6–R6: needles 3 wide, figure in the first two.
    const plan = checkedPlan(
      projectWith({
        motif: ['XX.', 'XX.', 'X..'],
        copies: [4],
        stitches: 12,
        rows: 8,
        piece: { shape: NARROWING },
        band: { position: { kind: 'from-row', row: 1 } },
      }),
    );
    // Row 2 takes L6 (figure of copy 1) and R6 (blank column of copy 4); row 3 the same.
    expect(only(plan, 'cut-copies')).toMatchObject([{ group: 0, copies: 1, rows: [2, 3] }]);
  });

  it.each([
    // Copy 1 has 5 figure stitches and loses one on row 2 and one on row 3, so 2 in 5: more than a quarter.
    { cutCopies: 'left-out', code: 'copies-left-out' },
    { cutCopies: 'kept-if-read', code: 'copies-left-out' },
    { cutCopies: 'kept', code: 'cut-copies' },
  ] as const)('are $cutCopies as asked, and said to be', ({ cutCopies, code }) => {
    const plan = checkedPlan(
      projectWith({
        motif: ['XX.', 'XX.', 'X..'],
        copies: [4],
        stitches: 12,
        rows: 8,
        piece: { shape: NARROWING },
        band: { position: { kind: 'from-row', row: 1 }, cutCopies },
      }),
    );
    const found = ['cut-copies', 'copies-left-out'].flatMap((kind) => only(plan, kind as 'cut-copies'));
    expect(found).toMatchObject([{ code, group: 0, copies: 1, rows: [2, 3] }]);
    // Row 1 is knitted whole where the copy is kept: its needle L6 is contrast.
    expect(plan.fabric.cells[0]).toBe(cutCopies === 'kept' ? 1 : 0);
    expect(plan.fabric.cells[3]).toBe(1);
  });

  it('are none where only blank columns are lost', () => {
    const plan = checkedPlan(
      projectWith({
        motif: ['.XX.', '.X..'],
        copies: [3],
        stitches: 12,
        rows: 8,
        piece: { shape: NARROWING },
        band: { position: { kind: 'from-row', row: 1 } },
      }),
    );
    expect(only(plan, 'cut-copies')).toEqual([]);
  });
});
