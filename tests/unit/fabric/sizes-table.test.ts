import { describe, expect, it } from 'vitest';
import { label } from '@shared/bed/index.ts';
import { sizesTable, type SizeColumn, type SizePlaced } from '@shared/fabric/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import {
  addSize,
  afterChange,
  changeCopies,
  changeSize,
  currentSize,
  pieceIn,
  inSize,
  renameSize,
  type ProjectAt,
} from '@shared/project/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { words } from '@shared/words/index.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from './pieces.ts';

/** M of 120 stitches with two groups of three copies of 12, whose first column is blank; then L of 132. */
function twoSizes(to: Pick<Parameters<typeof projectWith>[0], 'piece' | 'bed'> = {}): ProjectAt {
  const one = projectWith({
    motif: BLANK_FIRST_12_BY_31,
    copies: [3, 3],
    stitches: 120,
    rows: 100,
    ...to,
    piece: { hemRows: 100, ...to.piece },
    band: { unit: 'whole' },
  });
  return [
    (project: ProjectAt) => renameSize(project, 0, 'M'),
    (project: ProjectAt) => addSize(project, 1, 'L', 'large'),
    (project: ProjectAt) => changeSize(project, 1, { shape: { kind: 'rectangle', stitches: 132, rows: 110 } }),
  ].reduce((project, change) => afterChange(project, change(project)), one);
}

const placed = ({ placed: found }: SizeColumn): SizePlaced => {
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};

describe('the sizes side by side', () => {
  // M, common practice, no source: L48 and R12, the eye sees 13 / 24 / 13, set up at 59 for row 61.
  // L, worked by hand: 132 less two figures of 35 leaves 62; a margin of half a gap makes 15.5 and
  // 31, and 15 / 32 / 15 or 16 / 30 / 16 are both 2 from it; the wider margins are taken. The
  // blocks begin a blank column before the figure: L66 and 15 more is L51, R66 less 16 is R50,
  // whose block begins 35 needles before at R15. The hem is folded as before.
  it('are each placed by the one rule', () => {
    const [medium, large] = sizesTable(twoSizes()) as [SizeColumn, SizeColumn];
    expect([medium.name, medium.isCurrent, large.name, large.isCurrent]).toEqual(['M', true, 'L', false]);
    expect(placed(medium)).toMatchObject({
      bands: [
        {
          firstRow: 61,
          lastRow: 91,
          setUpAt: 59,
          spaces: { margins: [13, 13], gaps: [24] },
          acrossSeam: 26,
          fromRule: 2,
          imbalance: 0,
          holds: 10,
        },
      ],
    });
    expect(placed(large)).toMatchObject({
      bands: [{ firstRow: 61, spaces: { margins: [16, 16], gaps: [30] }, acrossSeam: 32, holds: 11 }],
    });
    // At 28 and 40 in 10 cm: 132 / 2.8 = 47.1, 110 / 4 = 27.5.
    expect(words.sizes.measures(large, 'cm')).toBe('47.1 × 27.5');
    const first = (size: SizeColumn): string[] => placed(size).bands[0]?.firstNeedles.map(label) ?? [];
    expect([first(medium), first(large)]).toEqual([
      ['L48', 'R12'],
      ['L51', 'R15'],
    ]);
  });

  it('agree with the plan of each', () => {
    const project = twoSizes();
    sizesTable(project).forEach((size, index) => {
      const plan = makePlan(pieceIn(inSize(project, index)));
      expect(placed(size).bands[0]?.firstNeedles).toEqual(plan.groups.map(({ block }) => block.first));
      expect(placed(size).bands[0]?.setUpAt).toBe(bandsOf(plan)[0]?.setUpAt);
    });
  });

  it('name what keeps one of them from being placed, and place the others', () => {
    const project = twoSizes();
    const crowded = afterChange(project, changeCopies(project, 0, 0, 0, 8));
    const [medium, large] = sizesTable(crowded) as [SizeColumn, SizeColumn];
    // 8 and 3 copies of 12 are 132: all of L, and 12 more than M has.
    expect(medium.placed).toMatchObject({
      ok: false,
      problem: { code: 'groups-wider-than-piece', facts: { needed: 132, available: 120 } },
    });
    expect(medium.groups[0]?.map(({ across }) => across)).toEqual([8, 3]);
    expect(placed(large).bands).toHaveLength(1);
  });

  it('say which of them leave the bed', () => {
    const table = sizesTable(twoSizes({ bed: { needles: 120, pitchMm: 4.5 } }));
    expect(table.map((size) => placed(size).beyondBed)).toEqual([null, { first: -66, last: 65 }]);
    expect(words.sizes.bed(placed(table[1] as SizeColumn), 120)).toBe('132 on 120');
  });

  it('are one column where there is one size', () => {
    const project = projectWith({ motif: ['XX', 'X.'], copies: [1], stitches: 10, rows: 10 });
    const [only] = sizesTable(project) as [SizeColumn];
    expect([only.name, only.isCurrent, currentSize(project)]).toEqual(['1', true, 0]);
    expect(words.sizes.gaps(placed(only).bands[0] as SizePlaced['bands'][number])).toBe('–');
  });
});
