import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_STITCHES } from '@shared/bed/index.ts';
import {
  edgesAt,
  edgeStepsOf,
  outlineOf,
  reshaped,
  stepsFromText,
  stepsToText,
  stitchesAt,
  type EdgeStep,
  type Shape,
} from '@shared/piece/index.ts';
import { outcome } from '@shared/problem/index.ts';

const standing = { oddStitch: 'right', offset: 0, hemRows: 0 } as const;
const stepped = (stitches: number, rows: number, lines: string): Shape => {
  return { kind: 'steps', stitches, rows, steps: stepsFromText(lines) };
};

const move = fc.integer({ min: -99, max: 99 });
const anySteps: fc.Arbitrary<EdgeStep[]> = fc.uniqueArray(
  fc
    .record({ row: fc.integer({ min: 2, max: 4000 }), left: move, right: move })
    .filter(({ left, right }) => left !== 0 || right !== 0),
  { selector: ({ row }) => row, maxLength: 30 },
);

describe('shaping written row by row', () => {
  it('is read as a knitter writes it, in any order', () => {
    expect(
      stepsFromText(
        'Row 40: -4 at the left\n\n row 12: +1 at each edge\nrow 13 : + 2 stitches at both edges; row 44: −2 at left edge, -1 st at the right',
      ),
    ).toEqual([
      { row: 12, left: 1, right: 1 },
      { row: 13, left: 2, right: 2 },
      { row: 40, left: -4, right: 0 },
      { row: 44, left: -2, right: -1 },
    ]);
    expect(stepsFromText(' \n')).toEqual([]);
  });

  it('comes back from its own lines', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const upwards = [...steps].sort((a, b) => a.row - b.row);
        expect(stepsFromText(stepsToText(steps))).toEqual(upwards);
      }),
    );
  });

  it.each([
    ['row 12', 'steps-line-unclear', { line: 'row 12' }],
    ['row 12: 1 at each edge', 'steps-line-unclear', { line: 'row 12: 1 at each edge' }],
    ['row 12: +0 at each edge', 'steps-line-unclear', { line: 'row 12: +0 at each edge' }],
    ['row 12: +1', 'steps-line-unclear', { line: 'row 12: +1' }],
    ['row 12: +1 at the neck', 'steps-line-divides', { line: 'row 12: +1 at the neck' }],
    ['row 60: -20 in the middle', 'steps-line-divides', { line: 'row 60: -20 in the middle' }],
    [
      'row 60: -4 at the left, -20 at the center',
      'steps-line-divides',
      { line: 'row 60: -4 at the left, -20 at the center' },
    ],
    ['divide at row 60', 'steps-line-divides', { line: 'divide at row 60' }],
    ['row 12: +1 at the bottleneck', 'steps-line-unclear', { line: 'row 12: +1 at the bottleneck' }],
    ['row 1.5: +1 at each edge', 'steps-line-unclear', { line: 'row 1.5: +1 at each edge' }],
    ['row 1: +1 at each edge', 'steps-row-is-cast-on', { row: 1 }],
    ['row 12: +1 at the left\nrow 12: +1 at the right', 'steps-row-twice', { row: 12 }],
    ['row 12: +1 at each edge, -1 at the left', 'steps-edge-twice', { row: 12, side: 'left' }],
  ])('is refused where it means nothing: %j', (lines, code, facts) => {
    expect(outcome(() => stepsFromText(lines))).toMatchObject({ ok: false, problem: { code, facts } });
  });
});

describe('a piece shaped row by row', () => {
  it('moves the edge that is named from that row on', () => {
    const outline = outlineOf(
      stepped(20, 10, 'row 4: +1 at each edge\nrow 6: -4 at the left\nrow 9: -3 at the right'),
      standing,
    );
    // By hand, from L10–R10: L11–R11, then L7–R11, then L7–R8; L1 is −1 and R1 is 0.
    expect([3, 4, 6, 9, 10].map((row) => edgesAt(outline, row))).toEqual([
      { first: -10, last: 9 },
      { first: -11, last: 10 },
      { first: -7, last: 10 },
      { first: -7, last: 7 },
      { first: -7, last: 7 },
    ]);
  });

  it.each([
    // 10 stitches, 10 taken away.
    ['row 5: -5 at each edge', 'shaping-leaves-nothing', { row: 5, taken: 10, before: 10 }],
    // 10 − 8 = 2 are left on row 5.
    ['row 5: -4 at each edge\nrow 7: -2 at the left', 'shaping-leaves-nothing', { row: 7, taken: 2, before: 2 }],
    // Ten away at one edge and twelve new at the other hang on nothing.
    ['row 5: -10 at the left, +12 at the right', 'shaping-leaves-nothing', { row: 5, taken: 10, before: 10 }],
    ['row 21: -1 at each edge', 'shaping-outside-piece', { row: 21, rows: 20 }],
    ['row 2: +500 at each edge', 'shaping-too-wide', { row: 2, needles: 1010, most: MOST_STITCHES }],
  ])('is refused where it runs into itself or off the piece: %j', (lines, code, facts) => {
    expect(outcome(() => outlineOf(stepped(10, 20, lines), standing))).toMatchObject({ problem: { code, facts } });
  });

  it('keeps one stitch if that is what the knitter wants', () => {
    expect(stitchesAt(outlineOf(stepped(10, 20, 'row 20: -9 at the left'), standing), 20)).toBe(1);
  });
});

describe('a body with a waist', () => {
  const body = { kind: 'body', stitches: 120, stitchesAtWaist: 100, stitchesAtChest: 116, rows: 200 } as const;

  it('is drawn in evenly to the waist and out again to the chest', () => {
    const outline = outlineOf({ ...body, rowsToWaist: 60, rowsToChest: 58 }, standing);
    // By hand: 10 fewer a side in 60 rows is every 6th row; 8 more a side in 58 rows is
    // every 7th row 6 times and every 8th twice: rows 67, 74, 81, 88, 95, 102, 110, 118.
    const rows = [1, 5, 6, 12, 54, 59, 60, 66, 67, 74, 102, 109, 110, 117, 118, 200];
    expect(rows.map((row) => stitchesAt(outline, row))).toEqual([
      120, 120, 118, 116, 102, 102, 100, 100, 102, 104, 112, 112, 114, 114, 116, 116,
    ]);
  });

  it('stands centred at the cast-on, the waist and the chest, odd or even', () => {
    const counts = fc.integer({ min: 1, max: 60 });
    fc.assert(
      fc.property(counts, counts, counts, fc.constantFrom('left', 'right'), (stitches, waist, chest, oddStitch) => {
        const stands = { oddStitch, offset: 0, hemRows: 0 } as const;
        const outline = outlineOf(
          {
            kind: 'body',
            stitches,
            stitchesAtWaist: waist,
            stitchesAtChest: chest,
            rowsToWaist: 61,
            rowsToChest: 61,
            rows: 140,
          },
          stands,
        );
        for (const [row, count] of [
          [1, stitches],
          [61, waist],
          [122, chest],
          [140, chest],
        ] as const) {
          const { first, last } = edgesAt(outline, row);
          expect(last - first + 1).toBe(count);
          // Needles left of the centre less those right of it.
          const lean = -first - (last + 1);
          expect(lean).toBe(count % 2 === 0 ? 0 : oddStitch === 'left' ? 1 : -1);
        }
      }),
    );
  });

  it.each([
    // Rows 2–9: row 1 is cast on.
    [{ rowsToWaist: 9, rowsToChest: 60 }, 'shaping-impossible', { changes: 10, rows: 8 }],
    [{ rowsToWaist: 100, rowsToChest: 101 }, 'shaping-outside-piece', { rows: 200 }],
  ])('is refused where its rows do not hold the shaping: %j', (rows, code, facts) => {
    expect(outcome(() => outlineOf({ ...body, ...rows }, standing))).toMatchObject({ problem: { code, facts } });
  });
});

describe('a piece given another kind of shape', () => {
  const kinds = ['rectangle', 'tapered', 'body', 'steps'] as const;

  it('can always be knitted, on the same cast-on and rows', () => {
    const size = fc.integer({ min: 1, max: 200 });
    const kind = fc.constantFrom(...kinds);
    fc.assert(
      fc.property(size, size, fc.nat(220), kind, kind, (stitches, rows, hemRows, one, other) => {
        const footing = { ...standing, hemRows: Math.min(hemRows, rows) };
        const first = reshaped({ kind: 'rectangle', stitches, rows }, one, footing);
        const second = reshaped(first, other, footing);
        const outline = outlineOf(second, footing);
        expect(outline.rows).toBe(rows);
        expect(stitchesAt(outline, 1)).toBe(stitches);
        expect(second.kind).toBe(other);
      }),
    );
  });

  it('keeps its outline when it is taken row by row', () => {
    const sleeve: Shape = { kind: 'tapered', stitches: 72, stitchesAtTop: 155, rows: 196, straightRows: 20 };
    const free = reshaped(sleeve, 'steps', standing);
    expect(outlineOf(free, standing)).toEqual(outlineOf(sleeve, standing));
    // 41 pairs, and the odd stitch on a row of its own.
    expect(edgeStepsOf(outlineOf(free, standing))).toHaveLength(42);
  });
});
