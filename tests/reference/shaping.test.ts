import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toMm, toUnit } from '@shared/length/index.ts';
import { evenChanges, fromSwatch, nearestCount, outlineOf, scheduleOf, stitchesAt } from '@shared/piece/index.ts';
import { outcome } from '@shared/problem/index.ts';

const standing = { oddStitch: 'right', offset: 0, hemRows: 0 } as const;
const changesIn = fc
  .record({ changes: fc.integer({ min: 1, max: 120 }), more: fc.integer({ min: 0, max: 240 }) })
  .map(({ changes, more }) => ({ changes, rows: changes + more }));

const intervalsOf = (rows: readonly number[]): number[] => rows.map((row, i) => row - (rows[i - 1] ?? 0));
const sorted = (numbers: readonly number[]): number[] => [...numbers].sort((a, b) => a - b);

/** Rows on which a line from (0, 0) to (rows, changes) rises, by the error term of J. E. Bresenham (1965), from memory. */
function lineRises(changes: number, rows: number): number[] {
  const rises: number[] = [];
  let error = 0;
  for (let row = 1; row <= rows; row++) {
    error += changes;
    if (error >= rows) {
      error -= rows;
      rises.push(row);
    }
  }
  return rises;
}

/**
 * A rhythm of `changes` beats in `rows` by Euclid's algorithm on sequences:
 * the rests are dealt to the beats until at most one odd sequence is left.
 * G. Toussaint, The Euclidean algorithm generates traditional musical rhythms (2005), from memory.
 */
function rhythm(changes: number, rows: number): boolean[] {
  let heads: boolean[][] = Array.from({ length: changes }, () => [true]);
  let tails: boolean[][] = Array.from({ length: rows - changes }, () => [false]);
  while (tails.length > 1) {
    const pairs = Math.min(heads.length, tails.length);
    const joined = heads.slice(0, pairs).map((head, i) => [...head, ...(tails[i] ?? [])]);
    tails = heads.length > pairs ? heads.slice(pairs) : tails.slice(pairs);
    heads = joined;
  }
  return [...heads, ...tails].flat();
}

describe('even shaping', () => {
  it('is the textbook rule: q = ⌊r/s⌋ and e = r − q·s, every q-th row s − e times, every (q + 1)-th e times', () => {
    fc.assert(
      fc.property(changesIn, ({ changes, rows }) => {
        const found = intervalsOf(evenChanges(changes, rows));
        const q = Math.floor(rows / changes);
        const e = rows - q * changes;
        expect(found.filter((interval) => interval === q)).toHaveLength(changes - e);
        expect(found.filter((interval) => interval === q + 1)).toHaveLength(e);
      }),
    );
  });

  it('has the intervals of the straightest line that can be drawn in rows and stitches', () => {
    fc.assert(
      fc.property(changesIn, ({ changes, rows }) => {
        const line = lineRises(changes, rows);
        expect(line).toHaveLength(changes);
        expect(sorted(intervalsOf(evenChanges(changes, rows)))).toEqual(sorted(intervalsOf(line)));
      }),
    );
  });

  it('has the intervals of the evenest rhythm', () => {
    fc.assert(
      fc.property(changesIn, ({ changes, rows }) => {
        const beats = rhythm(changes, rows).flatMap((isBeat, i) => (isBeat ? [i] : []));
        expect(beats).toHaveLength(changes);
        const between = beats.map((beat, i) => (beats[i + 1] ?? rows + (beats[0] ?? 0)) - beat);
        expect(sorted(intervalsOf(evenChanges(changes, rows)))).toEqual(sorted(between));
      }),
    );
  });
});

describe('a sleeve given in centimetres', () => {
  /**
   * Stitches in 10 cm: ranges of the Craft Yarn Council's Standard Yarn Weight
   * System (that of super bulky from memory); one gauge of each is taken. Rows
   * in 10 cm: any fabric's, given here. Cuff 20 cm, upper arm 32 cm, 45 cm
   * long, the last 5 cm straight. Counts worked by hand: centimetres × gauge / 10,
   * to the nearest; then half the difference of the widths in the rows below the straight run.
   */
  it.each([
    // 72; 115.2; 216; 24 → 43: 21 pairs in 192 rows, 192 = 21 × 9 + 3
    {
      of: 'lace',
      gauge: [36, 48],
      cuff: 72,
      top: 115,
      rows: 216,
      straight: 24,
      pairs: [
        [9, 18],
        [10, 3],
      ],
    },
    // 56; 89.6; 180; 20 → 34: 17 pairs in 160 rows, 160 = 17 × 9 + 7
    {
      of: 'super fine',
      gauge: [28, 40],
      cuff: 56,
      top: 90,
      rows: 180,
      straight: 20,
      pairs: [
        [9, 10],
        [10, 7],
      ],
    },
    // 50; 80; 153; 17 → 30: 15 pairs in 136 rows, 136 = 15 × 9 + 1
    {
      of: 'fine',
      gauge: [25, 34],
      cuff: 50,
      top: 80,
      rows: 153,
      straight: 17,
      pairs: [
        [9, 14],
        [10, 1],
      ],
    },
    // 44; 70.4; 135; 15 → 26: 13 pairs in 120 rows, 120 = 13 × 9 + 3
    {
      of: 'light',
      gauge: [22, 30],
      cuff: 44,
      top: 70,
      rows: 135,
      straight: 15,
      pairs: [
        [9, 10],
        [10, 3],
      ],
    },
    // 36; 57.6; 108; 12 → 22: 11 pairs in 96 rows, 96 = 11 × 8 + 8
    {
      of: 'medium',
      gauge: [18, 24],
      cuff: 36,
      top: 58,
      rows: 108,
      straight: 12,
      pairs: [
        [8, 3],
        [9, 8],
      ],
    },
    // 28; 44.8; 90; 10 → 17: 8 pairs in 80 rows, 80 = 8 × 10, and an odd stitch
    { of: 'bulky', gauge: [14, 20], cuff: 28, top: 45, rows: 90, straight: 10, pairs: [[10, 8]] },
    // 18; 28.8; 54; 6 → 11: 5 pairs in 48 rows, 48 = 5 × 9 + 3, and an odd stitch
    {
      of: 'super bulky',
      gauge: [9, 12],
      cuff: 18,
      top: 29,
      rows: 54,
      straight: 6,
      pairs: [
        [9, 2],
        [10, 3],
      ],
    },
  ])('in $of yarn casts on $cuff and widens to $top in $rows rows', ({ gauge, cuff, top, rows, straight, pairs }) => {
    const [across, up] = gauge as [number, number];
    const sleeve = {
      kind: 'tapered',
      stitches: nearestCount(200, across),
      stitchesAtTop: nearestCount(320, across),
      rows: nearestCount(450, up),
      straightRows: nearestCount(50, up),
    } as const;
    expect(sleeve).toMatchObject({ stitches: cuff, stitchesAtTop: top, rows, straightRows: straight });
    const outline = outlineOf(sleeve, standing);
    expect(stitchesAt(outline, rows - straight)).toBe(top);
    const each = scheduleOf(outline).filter(({ edge }) => edge === 'each');
    expect(each.map(({ every, times }) => [every, times])).toEqual(pairs);
  });
});

describe('a gauge measured on a swatch', () => {
  it.each([
    // By hand: 30 × 100 / 105 and so on; no rounding.
    { of: 'stitches', count: 30, mm: 105, inTenCm: 3000 / 105 },
    { of: 'rows', count: 42, mm: 120, inTenCm: 35 },
    // The bounds themselves are fabric still.
    { of: 'stitches', count: 1, mm: 100, inTenCm: 1 },
    { of: 'rows', count: 300, mm: 100, inTenCm: 300 },
  ] as const)('is exact: $count $of on $mm mm', ({ of, count, mm, inTenCm }) => {
    expect(fromSwatch(of, count, mm)).toBe(inTenCm);
  });

  it.each([
    ['stitches', 0, 100],
    ['stitches', 30, 0],
    ['stitches', 0, 0],
    ['rows', 400, 100],
    ['rows', -4, 100],
    ['stitches', 201, 100],
    ['rows', 1, 2000],
    ['rows', NaN, 100],
  ] as const)('is refused where no fabric has it: %s, %d on %d mm', (of, count, mm) => {
    expect(outcome(() => fromSwatch(of, count, mm))).toMatchObject({
      problem: { code: 'gauge-absurd', facts: { of } },
    });
  });
});

describe('a length in stitches or rows', () => {
  it('is never further off than half a stitch, and the count gives its own length back', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 200, noNaN: true }), fc.integer({ min: 1, max: 1000 }), (gauge, count) => {
        expect(nearestCount((count * 100) / gauge, gauge)).toBe(count);
        const mm = ((count + 0.4) * 100) / gauge;
        expect(Math.abs((nearestCount(mm, gauge) * 100) / gauge - mm)).toBeLessThanOrEqual(50 / gauge + 1e-6);
      }),
    );
  });

  it('is at least one stitch', () => {
    expect(nearestCount(0.1, 7)).toBe(1);
  });

  it('is the same in inches, of 25.4 mm by definition', () => {
    expect(toMm(10, 'in')).toBe(254);
    expect(toUnit(254, 'in')).toBe(10);
    // 7¾ in at 5 stitches an inch is 38.75; a knitter who wants an even 38 gives it in stitches.
    expect(nearestCount(toMm(7.75, 'in'), (5 / 25.4) * 100)).toBe(39);
  });
});
