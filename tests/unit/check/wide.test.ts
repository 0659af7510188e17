import fc from 'fast-check';
import { pieceIn } from '@shared/project/index.ts';
import { describe, expect, it } from 'vitest';
import { needlesOf, label } from '@shared/bed/index.ts';
import { panelsOf, type Finding } from '@shared/check/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import { rowListCsv } from '@shared/output/index.ts';
import type { Shape, Piece } from '@shared/piece/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { projectWith } from '../fabric/pieces.ts';
import { checkedPlan } from './found.ts';

type Wide = Extract<Finding, { code: 'wider-than-bed' }>;

/** One copy of two stitches on a piece without any, on so many needles. */
function pieceOn(
  needles: number | null,
  to: Partial<Piece>,
  copies: readonly number[] = [1],
  pitchMm = 4.5,
): ProjectAt {
  return projectWith({
    motif: ['XX', 'X.'],
    copies,
    stitches: 10,
    rows: 10,
    bed: { needles, pitchMm },
    piece: to,
  });
}

function wide(project: ProjectAt): Wide | null {
  const found = checkedPlan(project).findings.find(({ code }) => code === 'wider-than-bed');
  return (found as Wide | undefined) ?? null;
}

const rectangle = (stitches: number, rows = 10): Shape => ({ kind: 'rectangle', stitches, rows });
const sentenceFor = (project: ProjectAt): string => findingWords.text(wide(project) as Wide, project);

describe('the needles of a bed', () => {
  // L40 to R40 is 80 stitches: common practice, no source
  it.each([
    [80, 'L40', 'R40'],
    [200, 'L100', 'R100'],
    [115, 'L57', 'R58'],
    [1, 'R1', 'R1'],
  ])('of %i are %s to %s', (needles, first, last) => {
    const run = needlesOf(needles);
    expect([label(run.first), label(run.last)]).toEqual([first, last]);
  });
});

describe('a piece on the bed', () => {
  it.each([
    ['that holds it exactly', 10, {}],
    ['of unknown length', null, { shape: rectangle(1000) }],
    ['that it is moved on, up to the last needle', 14, { offset: 2 }],
  ])('%s has nothing to be said of it', (_, needles, to) => {
    expect(wide(pieceOn(needles, to))).toBeNull();
  });
});

describe('a piece that leaves the bed', () => {
  it('is planned as if the bed were long enough', () => {
    const plan = checkedPlan(pieceOn(9, {}));
    expect([plan.rows.length, plan.groups.length]).toEqual([10, 1]);
    expect(plan.findings[0]?.code).toBe('wider-than-bed');
  });

  it('says on which rows, and takes the widest', () => {
    // 10 stitches, one more at each edge on rows 3, 6, 9 and 12: 18 in all; the bed holds L6 to R6.
    const shape = { kind: 'tapered', stitches: 10, stitchesAtTop: 18, rows: 13, straightRows: 1 } as const;
    const project = pieceOn(12, { shape });
    expect(wide(project)).toMatchObject({ rows: [6, 13], row: 12, spans: [[6, 13]] });
    expect(sentenceFor(project)).toMatch(
      /^Rows 6–13 leave the bed: row 12 takes 18 stitches, L9–R9, and there are 12 needles, L6–R6\. /,
    );
    expect(rowListCsv(checkedPlan(project), pieceIn(project))).toContain(
      'cannot be knitted as it is. Rows 6–13 leave the bed',
    );
  });

  it('may come back onto it at the waist', () => {
    const shape: Shape = {
      kind: 'steps',
      stitches: 14,
      rows: 9,
      steps: [
        { row: 4, left: -2, right: -2 },
        { row: 8, left: 2, right: 1 },
      ],
    };
    const project = pieceOn(12, { shape });
    expect(wide(project)).toMatchObject({
      rows: [1, 9],
      row: 1,
      spans: [
        // On row 4 the carriage is at the left; two stitches at the right go on row 5.
        [1, 4],
        [8, 9],
      ],
    });
    expect(sentenceFor(project)).toContain('Rows between 1 and 9 leave the bed');
    expect(rowListCsv(checkedPlan(project), pieceIn(project))).toContain('Rows between 1 and 9 leave the bed');
  });

  it('fits in the middle, if it was pushed off', () => {
    const project = pieceOn(12, { offset: 4 });
    expect(wide(project)?.remedy).toEqual({ kind: 'move', needles: -4, offset: 0 });
    expect(sentenceFor(project)).toMatch(/In the middle of the bed it fits\.$/);
  });

  it('fits further to one side, if it grows to the other', () => {
    // L5 to R5, then three more at the right: L5 to R8, on a bed of L7 to R7.
    const shape: Shape = { kind: 'steps', stitches: 10, rows: 10, steps: [{ row: 5, left: 0, right: 3 }] };
    const project = pieceOn(14, { shape });
    expect(wide(project)?.remedy).toEqual({ kind: 'move', needles: -1, offset: -1 });
    expect(sentenceFor(project)).toMatch(/It fits 1 needle further to the left\.$/);
  });
});

describe('a piece too wide for the bed', () => {
  it('is knitted in halves, a seam stitch on each', () => {
    // 220 = 110 + 110, and a stitch each for the seam.
    const project = pieceOn(200, { shape: rectangle(220) }, [1, 1]);
    expect(wide(project)?.remedy).toMatchObject({ panels: { stitches: [111, 111], partedCopies: 0 } });
    expect(sentenceFor(project)).toContain('Knit it in 2 parts of 111 stitches each, parted after needle L1');
  });

  it('is parted between copies, though the parts differ', () => {
    // Copies of 20 from L50 to R50: the third lies on the centre, L10 to R10.
    const motif = [`${'X'.repeat(19)}.`];
    const project = projectWith({
      motif,
      copies: [5],
      stitches: 220,
      rows: 10,
      band: { unit: 'whole', judge: 'blocks' },
    });
    expect(checkedPlan(project).groups[0]?.block).toEqual({ first: -50, last: 49 });
    // L110 to L11 and a stitch; L10 to R110 and a stitch.
    expect(wide(project)?.remedy).toMatchObject({ panels: { stitches: [101, 121], partedCopies: 0 } });
    expect(sentenceFor(project)).toContain('101 and 121 stitches, parted after needle L11, where no copy is cut');
  });

  it('is parted through a copy where there is no other way', () => {
    // One copy of 20 on L10 to R10 of 22 stitches, on 13 needles: a part holds 12 and a seam stitch.
    const motif = [`${'X'.repeat(19)}.`];
    const project = projectWith({
      motif,
      copies: [1],
      stitches: 22,
      rows: 10,
      band: { unit: 'whole', judge: 'blocks' },
      bed: { needles: 13, pitchMm: 4.5 },
    });
    expect(wide(project)?.remedy).toMatchObject({ panels: { stitches: [12, 12], partedCopies: 1 } });
    expect(sentenceFor(project)).toContain('which cuts 1 copy');
  });

  it('takes three parts where two do not hold it, the middle one with two seam stitches', () => {
    // 167 + 1, 166 + 2 and 167 + 1 of 500.
    expect(wide(pieceOn(200, { shape: rectangle(500) }))?.remedy).toMatchObject({
      panels: { stitches: [168, 168, 168] },
    });
  });

  it('cannot be parted on needles that the seam stitches take', () => {
    expect(wide(pieceOn(2, {}))?.remedy).toMatchObject({ kind: 'divide', panels: null });
    expect(sentenceFor(pieceOn(2, {}))).toContain('L1–R1. Knit looser: at 5.6 stitches');
  });

  // 220 stitches at 28 in 10 cm are 78.6 cm; 200 needles hold that at 28 × 200 / 220 = 25.45….
  // Pitches and needles: common practice and from memory. At 6.5 mm, 220 × 4.5 / 6.5 = 152 are
  // more than the 138 of a bed as long; at 9 mm, 110 are as many as there are.
  it('fits at a looser gauge, or on a bed with needles further apart', () => {
    const remedy = wide(pieceOn(200, { shape: rectangle(220) }))?.remedy;
    expect(remedy).toMatchObject({
      looser: { stitches: 200, inTenCm: 25.4 },
      coarser: { pitchMm: 9, needles: 110, stitches: 110, inTenCm: 14 },
    });
    expect(sentenceFor(pieceOn(200, { shape: rectangle(220) }))).toContain(
      'at the 14 stitches in 10 cm that go with it, 110 of its 110 needles are as wide',
    );
  });

  it('fits on no bed if it is wider than all of them', () => {
    const project = pieceOn(200, { shape: rectangle(222) });
    expect(wide(project)?.remedy).toMatchObject({ coarser: null });
    // A fine bed of 250: 260 × 3.6 / 4.5 = 208 is too many, 260 × 3.6 / 6.5 = 144 too, 260 × 3.6 / 9 = 104 not.
    const fine = pieceOn(250, { shape: rectangle(260) }, [1], 3.6);
    expect(wide(fine)?.remedy).toMatchObject({ coarser: { pitchMm: 9, stitches: 104 } });
  });
});

describe('the parts of any piece', () => {
  it('are as few, cut as little and are as alike as any', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: 14 }),
        fc.integer({ min: 3, max: 9 }),
        fc.array(fc.record({ at: fc.integer({ min: 0, max: 12 }), width: fc.integer({ min: 2, max: 4 }) }), {
          maxLength: 3,
        }),
        (stitches, needles, copies) => {
          const outline = { rows: 1, first: Int32Array.of(0), last: Int32Array.of(stitches - 1) };
          const groups = copies.map(({ at, width }) => ({
            block: { first: at, last: at + width - 1 },
            copy: { width },
            across: 1,
            up: 1,
          })) as unknown as PlacedGroup[];
          const found = panelsOf(outline, groups, needles);
          const best = everyParting(stitches, needles)
            .map((ends) => ({ ends, ...scored(ends, stitches, copies) }))
            .sort((a, b) => a.ends.length - b.ends.length || a.cut - b.cut || a.squares - b.squares)[0];
          expect(found && [found.joins.length, found.partedCopies, squaresOf(found.stitches)]).toEqual(
            best ? [best.ends.length, best.cut, best.squares] : null,
          );
        },
      ),
      { numRuns: 200, seed: 71 },
    );
  });
});

const squaresOf = (stitches: readonly number[]): number => stitches.reduce((sum, count) => sum + count ** 2, 0);

/** Every set of joins, each the stitches left of it, whose parts fit with their seam stitches. */
function everyParting(stitches: number, needles: number): number[][] {
  return Array.from({ length: 2 ** (stitches - 1) }, (_, set) =>
    Array.from({ length: stitches - 1 }, (_, at) => at + 1).filter((end) => (set >> (end - 1)) & 1),
  ).filter((ends) => widthsOf(ends, stitches).every((width) => width <= needles));
}

function widthsOf(ends: readonly number[], stitches: number): number[] {
  return [...ends, stitches].map((end, part) => {
    return end - (ends[part - 1] ?? 0) + Number(part > 0) + Number(part < ends.length);
  });
}

function scored(
  ends: readonly number[],
  stitches: number,
  copies: readonly { readonly at: number; readonly width: number }[],
): { readonly cut: number; readonly squares: number } {
  const cut = ends.flatMap((end) => copies.filter(({ at, width }) => end > at && end < at + width)).length;
  return { cut, squares: squaresOf(widthsOf(ends, stitches)) };
}
