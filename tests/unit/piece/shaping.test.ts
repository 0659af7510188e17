import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenChanges, outlineOf, stitchCount, stitchesAt, type Shape, type Standing } from '@shared/piece/index.ts';

/** How often each interval comes: `[[9, 2], [10, 9]]` is every 9th row twice, every 10th nine times. */
function intervals(rows: readonly number[]): [number, number][] {
  const counts = new Map<number, number>();
  rows.forEach((row, i) => {
    const interval = row - (rows[i - 1] ?? 0);
    counts.set(interval, (counts.get(interval) ?? 0) + 1);
  });
  return [...counts];
}

describe('even shaping', () => {
  it.each([
    // hobby article working the same formula, computed again
    {
      changes: 36,
      rows: 140,
      expected: [
        [3, 4],
        [4, 32],
      ],
    },
    // C. Brunette, Sweater 101, 1991, as restated by A. Budd, 2010
    {
      changes: 14,
      rows: 124,
      expected: [
        [8, 2],
        [9, 12],
      ],
    },
    // hobby article, 2014, last step computed: cuff 38 to upper arm 60 stitches
    {
      changes: 11,
      rows: 108,
      expected: [
        [9, 2],
        [10, 9],
      ],
    },
    // hobby article, computed again: sleeve at 28 × 40, 72 to 156 stitches, 20 rows straight
    {
      changes: 42,
      rows: 176,
      expected: [
        [4, 34],
        [5, 8],
      ],
    },
    // exact division, computed
    { changes: 14, rows: 126, expected: [[9, 14]] },
    { changes: 1, rows: 7, expected: [[7, 1]] },
    { changes: 0, rows: 7, expected: [] },
  ])('of $changes over $rows rows is $expected', ({ changes, rows, expected }) => {
    expect(intervals(evenChanges(changes, rows))).toEqual(expected);
  });

  it('on right-side rows only is the same over half the rows', () => {
    // rule given in Righetti's handbook, second-hand; computed: 25 in 166 rows, every 6th 17 times, every 8th 8 times
    const doubled = intervals(evenChanges(25, 166 / 2)).map(([every, times]) => [2 * every, times]);
    expect(doubled).toEqual([
      [6, 17],
      [8, 8],
    ]);
  });

  it('ends on the last row, its intervals never differing by more than one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 0, max: 300 }), (changes, more) => {
        const rows = changes + more;
        const found = evenChanges(changes, rows);
        const widths = intervals(found).map(([width]) => width);
        expect(found).toHaveLength(changes);
        expect(found.at(-1)).toBe(rows);
        expect(Math.max(...widths) - Math.min(...widths)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('refuses more changes than rows', () => {
    expect(() => evenChanges(8, 7)).toThrow('shaping-impossible');
  });
});

describe('the outline of a tapered piece', () => {
  const standing: Standing = { oddStitch: 'right', offset: 0 };

  it('is the sleeve of the worked example', () => {
    // 72 to 156 stitches in 176 of 196 rows, 42 increases a side: hobby article, computed again
    const sleeve: Shape = { kind: 'tapered', stitches: 72, stitchesAtTop: 156, rows: 196, straightRows: 20 };
    const outline = outlineOf(sleeve, standing);
    expect([1, 3, 4, 8, 175, 176, 196].map((row) => stitchesAt(outline, row))).toEqual([72, 72, 74, 76, 154, 156, 156]);
    // By hand: 34 steps of 4 rows, then 8 of 5, then 21 rows at full width, less the row shared with the last step.
    let stitches = 72 * 3;
    for (let step = 1; step < 42; step++) stitches += (72 + 2 * step) * (step < 34 ? 4 : 5);
    stitches += 156 * 21;
    expect(stitchCount(outline)).toBe(stitches);
  });

  it.each([
    { from: 10, to: 20, rows: 20, straight: 0 },
    { from: 20, to: 10, rows: 20, straight: 3 },
    { from: 10, to: 15, rows: 9, straight: 0 },
    { from: 15, to: 10, rows: 9, straight: 0 },
    { from: 10, to: 11, rows: 1, straight: 0 },
    { from: 10, to: 10, rows: 5, straight: 5 },
  ])('goes from $from to $to stitches in $rows rows', ({ from, to, rows, straight }) => {
    for (const oddStitch of ['left', 'right'] as const) {
      const outline = outlineOf(
        { kind: 'tapered', stitches: from, stitchesAtTop: to, rows, straightRows: straight },
        { oddStitch, offset: 3 },
      );
      expect(stitchesAt(outline, rows)).toBe(to);
      for (let row = 2; row <= rows; row++) {
        const change = stitchesAt(outline, row) - stitchesAt(outline, row - 1);
        expect(Math.abs(change)).toBeLessThanOrEqual(3);
        expect(Math.sign(change) * Math.sign(to - from)).toBeGreaterThanOrEqual(0);
      }
    }
  });
});
