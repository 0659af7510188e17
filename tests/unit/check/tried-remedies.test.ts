/** A remedy leaves fewer long floats and carries where the finding is and on the whole piece, or it is none. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { findingsOf, Remedies, remediesFor, type Remedy } from '@shared/check/index.ts';
import type { Position, Section } from '@shared/piece/index.ts';
import { pieceIn, startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';
import { byHand, checkedPlan, FIVE, onlyFindings, remediesOf, TWO_COLUMNS } from './found.ts';

const fromRow = (row: number): { readonly position: Position } => ({ position: { kind: 'from-row', row } });

describe('a remedy of one finding among others', () => {
  const one = projectWith({ ...TWO_COLUMNS, stitches: 40, rows: 20, piece: FIVE, band: byHand(-5, 4) });
  const [band] = one.patterns as [ProjectAt['patterns'][number]];
  /** Two columns on rows 2 to 4, and two on rows 8 to 10. */
  const both = (lower: number, upper: number): ProjectAt => ({
    ...one,
    patterns: [
      { ...band, ...byHand(-5, lower), ...fromRow(2) } as typeof band,
      { ...band, ...byHand(-5, upper), ...fromRow(8) } as typeof band,
    ],
  });
  /** What moving the second columns does about the floats of rows 2 to 4. */
  function moving(project: ProjectAt, lower: number, upper: number): Remedy | null {
    const plan = checkedPlan(project);
    const all = onlyFindings(plan, 'long-floats').filter(({ rows }) => rows[0] === 2);
    const [finding] = all;
    if (!finding) throw new Error('Nothing floats too far');
    const first = (second: number) => [-5, second] as Slot[];
    return new Remedies(pieceIn(project), plan).tried(
      { finding, all },
      {
        code: 'move-groups',
        bands: [
          { band: 0, first: first(lower) },
          { band: 1, first: first(upper) },
        ],
      },
    );
  }

  it('is one where fewer are left there and on the piece', () => {
    // Three floats; the carry up to the second columns stays too long.
    expect(moving(both(4, 1), 1, 1)?.effect).toMatchObject({
      long: { before: 4, after: 1 },
      here: { before: 4, after: 1 },
    });
  });

  it('is none where as many come elsewhere', () => {
    expect(moving(both(4, 1), 1, 4)).toBeNull();
  });

  it('is none where fewer are left elsewhere alone', () => {
    expect(moving(both(4, 4), 4, 1)).toBeNull();
  });
});

describe('a carry that is too long', () => {
  // A dot at the right on row 2, and 19 needles to the left of it one on row 4, in the contrast.
  const far = (lined: readonly boolean[]): ProjectAt =>
    projectWith({
      motif: [`X${'.'.repeat(19)}`, '.'.repeat(20), `${'.'.repeat(19)}X`],
      copies: [1],
      stitches: 20,
      rows: 6,
      band: { ...fromRow(2), unit: 'whole' },
      piece: {
        ...FIVE,
        sections: lined.map((isLined, index): Section => {
          return { name: `section ${index + 1}`, rows: 3, isLined, gauge: null, tension: '' };
        }),
      },
    });
  const cuts = (project: ProjectAt) => remediesOf(project).filter(({ intent }) => intent.code === 'cut-carries');

  it.each([
    { ends: 'in the open', lined: [false, false] },
    { ends: 'out of a lined section', lined: [true, false] },
    { ends: 'into a lined section', lined: [false, true] },
  ])('is mended $ends', ({ lined }) => {
    expect(cuts(far(lined))).toMatchObject([{ effect: { here: { before: 1, after: 0 } } }]);
  });

  it('is covered where both its ends are', () => {
    expect(cuts(far([true, true]))).toEqual([]);
    expect(onlyFindings(checkedPlan(far([true, true])), 'lined-carry')).toHaveLength(1);
  });
});

describe('a lining over one row of a column that is latched up', () => {
  // Contrast on 15 of 20 needles from row 3 on; at rows 17 and 18 the piece is wider, and two rows are no column there.
  const section = { isLined: false, gauge: null, tension: '' };
  const latched: ProjectAt = {
    ...projectWith({
      motif: ['X'],
      copies: [1],
      stitches: 20,
      rows: 18,
      piece: {
        floatLimit: { stitches: 5, mm: 25 },
        gauge: { stitches: 12, rows: 16 },
        shape: { kind: 'tapered', stitches: 20, stitchesAtTop: 22, rows: 18, straightRows: 0 },
        hemRows: 1,
        sections: [
          { ...section, name: 'lower', rows: 2 },
          { ...section, name: 'upper', rows: 1 },
        ],
      },
    }),
    patterns: [
      {
        ...startAllOver('motif', 1),
        position: {
          kind: 'from-to',
          from: { kind: 'above-hem', rows: 1 },
          to: { kind: 'from-edge', edge: 'upper', section: 'piece', rows: 0 },
        },
        border: { left: 0, right: 5 },
        longFloats: 'latched-up',
      },
    ],
  };

  it('is told with the row below it, which is alone then and cannot be latched', () => {
    const piece = pieceIn(latched);
    const plan = checkedPlan(latched);
    const offered = remediesFor(piece, plan, findingsOf(piece, plan));
    expect(offered.map(({ intent }) => intent.code)).toContain('lining');
    // It covers a float of each yarn on row 4; both of row 3 lie loose for it.
    expect(offered.map(({ intent }) => intent)).not.toContainEqual({ code: 'line-section', section: 1 });
  });
});
