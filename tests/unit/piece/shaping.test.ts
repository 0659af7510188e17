import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  edgesAt,
  evenChanges,
  oddDifferences,
  outlineOf,
  stitchCount,
  stitchesAt,
  type Footing,
  type Shape,
} from '@shared/piece/index.ts';
import { outcome } from '@shared/problem/index.ts';

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
  const standing: Footing = { oddStitch: 'right', offset: 0, hemRows: 0 };

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

  /** Stitches on every row. */
  const widths = (shape: Shape, hemRows = 0): number[] => {
    const outline = outlineOf(shape, { ...standing, hemRows });
    return Array.from({ length: outline.rows }, (_, index) => stitchesAt(outline, index + 1));
  };

  it('casts on what was asked for, and is straight at the end', () => {
    // 5 fewer a side in 9 rows: rows 2 to 8 can be changed. By hand: 7 = 5 + 2, every row 3 times and every 2nd twice.
    expect(widths({ kind: 'tapered', stitches: 20, stitchesAtTop: 10, rows: 9, straightRows: 0 })).toEqual([
      20, 18, 16, 14, 14, 12, 12, 10, 10,
    ]);
    // 3 more a side in 8 rows, 7 of them shaped: every 2nd row twice, then every 3rd: rows 2, 4, 7.
    expect(widths({ kind: 'tapered', stitches: 10, stitchesAtTop: 16, rows: 8, straightRows: 0 })).toEqual([
      10, 12, 12, 14, 14, 14, 16, 16,
    ]);
  });

  it('gives an odd stitch a row of its own, at one edge', () => {
    // 5 more in 9 rows, 8 of them shaped: 2 pairs on rows 4 and 8; the longest stretch between is rows 5–7.
    const tapered = { kind: 'tapered', stitches: 10, stitchesAtTop: 15, rows: 9, straightRows: 1 } as const;
    expect(widths(tapered)).toEqual([10, 10, 10, 12, 12, 13, 13, 15, 15]);
    for (const oddStitch of ['left', 'right'] as const) {
      const outline = outlineOf(tapered, { ...standing, oddStitch });
      const [before, on] = [edgesAt(outline, 5), edgesAt(outline, 6)];
      expect([before.first - on.first, on.last - before.last]).toEqual(oddStitch === 'left' ? [1, 0] : [0, 1]);
    }
    // One stitch alone, on rows 2–8: in the middle of them.
    expect(widths({ kind: 'tapered', stitches: 10, stitchesAtTop: 9, rows: 9, straightRows: 0 })).toEqual([
      10, 10, 10, 10, 9, 9, 9, 9, 9,
    ]);
  });

  it('hangs as many loops as there are needles: none is changed inside a folded hem, nor on the row that joins it', () => {
    const sleeve: Shape = { kind: 'tapered', stitches: 62, stitchesAtTop: 90, rows: 100, straightRows: 10 };
    // A hem of 20 rows: 14 a side in rows 21–90, every 5th row from the top of the hem: rows 25, 30, …, 90.
    const found = widths(sleeve, 20);
    expect(new Set(found.slice(0, 24))).toEqual(new Set([62]));
    expect([25, 29, 30, 89, 90, 100].map((row) => found[row - 1])).toEqual([64, 64, 66, 88, 90, 90]);
    // As many changes as rows: row 21 joins the hem, so the first is on row 22.
    const steep: Shape = { kind: 'tapered', stitches: 62, stitchesAtTop: 70, rows: 26, straightRows: 1 };
    expect(widths(steep, 20).slice(19)).toEqual([62, 62, 64, 66, 68, 70, 70]);
    // A hem of one row does not fold.
    expect(widths(steep, 1)).toEqual(widths(steep));
  });

  it.each([
    { what: 'rows that suffice by one too few', to: 20, rows: 6, hemRows: 0, facts: { changes: 5, rows: 4 } },
    { what: 'an odd stitch without a row of its own', to: 11, rows: 2, hemRows: 0, facts: { changes: 1, rows: 0 } },
    { what: 'a hem that takes all rows', to: 12, rows: 20, hemRows: 18, facts: { changes: 1, rows: 0 } },
    { what: 'more changes than rows beside an odd one', to: 19, rows: 6, hemRows: 0, facts: { changes: 5, rows: 4 } },
  ])('is refused with $what', ({ to, rows, hemRows, facts }) => {
    const shape: Shape = { kind: 'tapered', stitches: 10, stitchesAtTop: to, rows, straightRows: 0 };
    const made = outcome(() => outlineOf(shape, { ...standing, hemRows }));
    expect(made).toMatchObject({ ok: false, problem: { code: 'shaping-impossible', facts } });
  });
});

describe('an odd difference', () => {
  it('is named, with the widths beside it that both edges reach alike', () => {
    const tapered: Shape = { kind: 'tapered', stitches: 38, stitchesAtTop: 61, rows: 109, straightRows: 1 };
    expect(oddDifferences(tapered)).toEqual([
      {
        at: 'top',
        even: [
          { stitches: 60, shape: { ...tapered, stitchesAtTop: 60 } },
          { stitches: 62, shape: { ...tapered, stitchesAtTop: 62 } },
        ],
      },
    ]);
    expect(oddDifferences({ ...tapered, stitchesAtTop: 60 })).toEqual([]);
    expect(oddDifferences({ ...tapered, stitchesAtTop: 1 })).toMatchObject([{ even: [{ stitches: 2 }] }]);
    expect(oddDifferences({ ...tapered, stitches: 999, stitchesAtTop: 1000 })).toMatchObject([
      { even: [{ stitches: 999 }] },
    ]);
  });

  it('is looked for at the waist and from there to the chest', () => {
    const body = { kind: 'body', stitches: 120, rowsToWaist: 60, rowsToChest: 60, rows: 200 } as const;
    const at = (stitchesAtWaist: number, stitchesAtChest: number) =>
      oddDifferences({ ...body, stitchesAtWaist, stitchesAtChest }).map((odd) => odd.at);
    expect([at(100, 116), at(101, 117), at(101, 116), at(100, 115)]).toEqual([
      [],
      ['waist'],
      ['waist', 'chest'],
      ['chest'],
    ]);
  });
});
