/** All-overs that start above the hem, in sizes whose hems are not alike. */
import { describe, expect, it } from 'vitest';
import { allOversOf } from '@shared/pattern/index.ts';
import { TO_THE_TOP, type Extent } from '@shared/piece/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import {
  addSize,
  afterChange,
  changePiece,
  changeSize,
  changeOf,
  pieceIn,
  projectFromText,
  projectToText,
  projectAt,
  removeSize,
  setPattern,
  startAllOver,
  type ProjectAt,
} from '@shared/project/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';
import { settled } from '../../written-projects.ts';
import { projectWith } from '../fabric/pieces.ts';
import { inSize } from '@shared/project/sizes.ts';

/** Of 100 rows with a hem of 20, then of 110 rows with a hem of 26: 40 rows in 10 cm, in the hem too. */
function twoSizes(position: Extent): ProjectAt {
  const plain = projectWith({
    motif: ['X.', '.X'],
    copies: [1],
    stitches: 40,
    rows: 100,
    piece: { hemRows: 20, gauge: { stitches: 28, rows: 40 } },
  });
  const filled = settled(plain, { patterns: [{ ...startAllOver('motif', 1), position }] });
  const two = afterChange(filled, addSize(filled, 1, 'L', 'large'));
  return afterChange(two, changeSize(two, 1, { hemRows: 26, shape: { kind: 'rectangle', stitches: 40, rows: 110 } }));
}

function rowsIn(project: ProjectAt): (readonly [number, number] | string)[] {
  return project.sizes.map((_, index) => {
    const plan = outcome(() => makePlan(pieceIn(inSize(project, index))));
    if (!plan.ok) return plan.problem.code;
    const [placed] = allOversOf(plan.value);
    return placed ? [placed.firstRow, placed.lastRow] : 'none';
  });
}

const aboveHem = (rows: number, lengthMm?: number): Extent => ({
  kind: 'from-to',
  from: { kind: 'above-hem', rows, ...(lengthMm !== undefined && { lengthMm }) },
  to: TO_THE_TOP,
});

describe('an all-over above the hem', () => {
  it('starts so many rows above the hem of each size, and goes up to its top', () => {
    // With one plain row it starts on the second row above the hem.
    expect(rowsIn(twoSizes(aboveHem(1)))).toEqual([
      [22, 100],
      [28, 110],
    ]);
  });

  it('goes with the hem of the size that is changed, and with none of the others', () => {
    const project = twoSizes(aboveHem(1));
    const higher = expectChangeLaws(project, changeSize(project, 1, { hemRows: 30 }));
    expect(rowsIn(higher)).toEqual([
      [22, 100],
      [32, 110],
    ]);
  });

  it('ends so many rows below the top of each size', () => {
    const position: Extent = { ...aboveHem(3), kind: 'from-to', to: { ...TO_THE_TOP, rows: 6 } } as Extent;
    expect(rowsIn(twoSizes(position))).toEqual([
      [24, 94],
      [30, 104],
    ]);
  });

  it('of so many rows is centred between hem and top in each size', () => {
    // 80 rows less 30 are 25 below; 84 less 30 are 27.
    const position: Extent = {
      kind: 'so-high',
      height: 30,
      at: { kind: 'centred', section: 'body', oddRow: 'below' },
    };
    expect(rowsIn(twoSizes(position))).toEqual([
      [46, 75],
      [54, 83],
    ]);
  });

  it('is refused in the size in which its last row would lie below its first', () => {
    const position: Extent = {
      kind: 'from-to',
      from: { kind: 'above-hem', rows: 10 },
      to: { kind: 'to-row', row: 34 },
    };
    expect(rowsIn(twoSizes(position))).toEqual([[31, 34], 'fill-rows-turned']);
  });

  it('is refused in a size without a hem', () => {
    const project = twoSizes(aboveHem(1));
    expect(rowsIn(afterChange(project, changeSize(project, 0, { hemRows: 0 })))).toEqual([
      'section-missing',
      [28, 110],
    ]);
  });

  it('given as a length follows the gauge in every size, and when the size it was given in goes', () => {
    // 25 mm are 10 rows at 40 in 10 cm, and 12 at 48.
    const project = twoSizes(aboveHem(10, 25));
    expect(rowsIn(project)).toEqual([
      [31, 100],
      [37, 110],
    ]);
    const tight = expectChangeLaws(project, changePiece(project, 'gauge', { gauge: { stitches: 28, rows: 48 } }));
    expect(rowsIn(tight)).toEqual([
      [33, 100],
      [39, 110],
    ]);
    expect(rowsIn(afterChange(tight, removeSize(tight, 0)))).toEqual([[39, 110]]);
    // Typed as rows, the length is forgotten.
    const typed = changeOf('all-over-rows', setPattern(tight, 'all-over', 0, { position: aboveHem(12) }));
    const counted = afterChange(tight, typed);
    expect(rowsIn(afterChange(counted, changePiece(counted, 'gauge', { gauge: { stitches: 28, rows: 40 } })))).toEqual([
      [33, 100],
      [39, 110],
    ]);
  });

  it('is kept by the file as it was said', () => {
    const { whole } = twoSizes(aboveHem(10, 25));
    const again = projectFromText(projectToText(whole));
    expect(again).toEqual(whole);
    expect(allOversOf(projectAt(again))[0]?.position).toEqual(aboveHem(10, 25));
  });
});
