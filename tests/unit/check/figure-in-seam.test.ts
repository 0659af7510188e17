import { describe, expect, it } from 'vitest';
import { bandsOf, type Band } from '@shared/pattern/index.ts';
import { projectWith } from '../fabric/pieces.ts';
import { byHand, onlyFindings as only, checkedPlan } from './found.ts';

describe('the seam', () => {
  const SEAM = { seamAllowance: { left: 2, right: 3 } };

  it('swallows figure that stands in its allowance', () => {
    // 20 stitches, L10–R10. The first group covers L10–L9, both in the left allowance; the other ends at R9.
    const plan = checkedPlan(
      projectWith({
        motif: ['XX', 'X.'],
        copies: [1, 1],
        stitches: 20,
        rows: 4,
        piece: SEAM,
        band: { ...byHand(-10, 7), position: { kind: 'from-row', row: 2 } },
      }),
    );
    // On the right the allowance is R8–R10; the lower row reaches R8 only, the upper one R9.
    expect(only(plan, 'figure-in-seam')).toMatchObject([
      { side: 'left', stitches: 2, rows: [2, 3] },
      { side: 'right', stitches: 2, rows: [2, 3] },
    ]);
  });

  it.each(['figure', 'blocks'] as const)('may swallow blank columns, also where %s are placed evenly', (judge) => {
    const given = {
      motif: ['.X', '.X'],
      copies: [1],
      stitches: 10,
      rows: 2,
      piece: { seamAllowance: { left: 1, right: 1 } },
      band: { ...byHand(-5), unit: 'whole' as const, judge },
    };
    expect(only(checkedPlan(projectWith(given)), 'figure-in-seam')).toEqual([]);
    const seamOfTwo = { ...given, piece: { seamAllowance: { left: 2, right: 1 } } };
    expect(only(checkedPlan(projectWith(seamOfTwo)), 'figure-in-seam')).toMatchObject([
      { side: 'left', stitches: 1, rows: [1, 2] },
    ]);
  });

  // 12 stitches, L6–R6; a slanting line of 4 columns, the lowest row first.
  const SLANT = { motif: ['...X', '..X.', '.X..', 'X...'], copies: [1], stitches: 12, rows: 6 };
  const slanting = (first: number, left: number, right: number) =>
    only(
      checkedPlan(
        projectWith({
          ...SLANT,
          piece: { seamAllowance: { left, right } },
          band: { ...byHand(first), unit: 'whole', position: { kind: 'from-row', row: 2 } },
        }),
      ),
      'figure-in-seam',
    );

  it.each([
    // On L6–L3: row 2 knits L6, row 3 L5, row 4 L4, row 5 L3.
    { first: -6, left: 1, right: 0, found: [{ side: 'left', stitches: 1, rows: [2, 2] }], why: 'L6 alone' },
    { first: -6, left: 3, right: 0, found: [{ side: 'left', stitches: 3, rows: [2, 4] }], why: 'L6 to L4' },
    { first: -5, left: 1, right: 0, found: [], why: 'L5 lies beside the seam' },
    { first: -5, left: 2, right: 0, found: [{ side: 'left', stitches: 1, rows: [2, 2] }], why: 'L5 alone, one deep' },
    // On R3–R6: row 5 knits R6, row 4 R5.
    { first: 2, left: 0, right: 1, found: [{ side: 'right', stitches: 1, rows: [5, 5] }], why: 'R6 alone' },
    { first: 2, left: 0, right: 2, found: [{ side: 'right', stitches: 2, rows: [4, 5] }], why: 'R5 and R6' },
    { first: 1, left: 0, right: 1, found: [], why: 'R5 lies beside the seam' },
  ])('is judged row by row by what is knitted in it: $why', ({ first, left, right, found }) => {
    expect(slanting(first, left, right)).toMatchObject(found);
    expect(slanting(first, left, right)).toHaveLength(found.length);
  });

  it.each([
    { first: -6, side: 'left' },
    { first: 3, side: 'right' },
  ] as const)('takes the stitch nearest to the $side edge of a row with several', ({ first, side }) => {
    const plan = checkedPlan(
      projectWith({
        motif: ['X.X'],
        copies: [1],
        stitches: 12,
        rows: 3,
        piece: { seamAllowance: { left: 1, right: 1 } },
        band: { ...byHand(first), unit: 'whole' },
      }),
    );
    expect(only(plan, 'figure-in-seam')).toMatchObject([{ side, stitches: 1, rows: [2, 2] }]);
  });

  it('is not reached by the group that stands before another in it', () => {
    // Two bands of one stitch side by side on one row: the one on L5 is clear of a seam of 1, the one on L6 is not.
    const project = projectWith({ motif: ['X'], copies: [1], stitches: 12, rows: 3, band: byHand(-5) });
    const [inner] = bandsOf(project) as [Band];
    const bands = [inner, { ...inner, ...byHand(-6) }];
    const plan = checkedPlan({
      ...project,
      patterns: bands,
      piece: { ...project.piece, seamAllowance: { left: 1, right: 1 } },
    });
    expect(plan.rows[1]?.contrast).toMatchObject([{ first: -6, last: -5 }]);
    expect(only(plan, 'figure-in-seam')).toHaveLength(1);
  });
});
