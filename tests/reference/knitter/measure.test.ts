/** Yarns measured on small fabrics, against what is worked by hand. */
import { describe, expect, it } from 'vitest';
import { band } from './examples/band.ts';
import type { Example } from './examples/example.ts';
import { ownBalls } from './examples/own-balls.ts';
import { knit, type Knitted } from './index.ts';
import { isNearUp, isOverLimit, loopMm, looseOf, measureYarn, wrappingMm, type Gauging } from './measure.ts';
import { labelOf } from './needles.ts';
import type { Step } from './way.ts';

function knitted({ order, machine, patterns }: Example): Knitted {
  const done = knit(order, { machine, patterns });
  if (!done.ok) throw new Error(done.why);
  return done;
}

/** A length as it lies: each row with its needles in the order of the carriage, those that it lies behind in brackets. */
function written(way: readonly Step[]): string {
  const rows = new Map<number, string[]>();
  for (const { row, needle, does } of way) {
    const at = labelOf(needle);
    rows.set(row, [...(rows.get(row) ?? []), does === 'knit' ? at : does === 'float' ? `(${at})` : `<${at}>`]);
  }
  return [...rows].map(([row, needles]) => `${row}: ${needles.join(' ')}`).join(', ');
}

// Stitches of 5 mm, rows of 4 mm, and 5 stitches in a cm².
const even: Gauging = () => ({ stitches: 20, rows: 25 });

describe('a yarn in the fabric', () => {
  it('lies from edge to edge out of the first feeder, out of the second where it knits', () => {
    const { laid } = knitted(band);
    expect(laid.map(({ yarn, begunAt, cutAt }) => `${yarn} ${begunAt}–${cutAt}`)).toEqual(['slate 0–8', 'chalk 3–6']);
    const [main, chalk] = laid.map(({ way }) => way) as [readonly Step[], readonly Step[]];
    expect(written(chalk)).toBe('4: L1, 5: L2 L1 R1, 6: L1');
    expect(written(main.filter(({ row }) => row >= 4 && row <= 5))).toBe(
      '4: R4 R3 R2 R1 (L1) L2 L3 L4, 5: L4 L3 (L2) (L1) (R1) R2 R3 R4',
    );
  });

  it('lies where it was laid by hand, each ball by itself', () => {
    const { laid } = knitted(ownBalls);
    expect(
      laid.map(({ yarn, ball, way }) => `${yarn} of ${ball}, ${written(way.filter(({ row }) => row < 4))}`),
    ).toEqual([
      'slate of null, 1: L5 L4 L3 L2 L1 R1 R2 R3 R4 R5, 2: R5 (R4) (R3) R2 R1 L1 L2 (L3) (L4) L5, 3: L5 (L4) L3 L2 L1 R1 R2 R3 (R4) R5',
      'chalk of right, 2: R4 R3',
      'chalk of left, 2: L3 L4, 3: L4',
      'moss of third, 3: R4',
    ]);
  });
});

describe('what is measured of it', () => {
  it('is how long a float lies loose: between its ends and what holds it', () => {
    expect(looseOf({ first: 3, last: 12, liftedOn: [] })).toBe(10);
    expect(looseOf({ first: 3, last: 12, liftedOn: [6] })).toBe(6);
    expect(looseOf({ first: -2, last: 7, liftedOn: [-2, 4] })).toBe(5);
    expect(looseOf({ first: 3, last: 12, liftedOn: [6, 9] })).toBe(3);
  });

  // Munden, J. Text. Inst. 50 (1959) T448, ks = 19.0 from memory: l² = 19 / 5 cm², l = 19.494 mm.
  it('is a loop for each stitch, floats, and the way from row to row', () => {
    const { laid } = knitted(band);
    const [main, chalk] = laid.map((length, index) => measureYarn(length, even, index === 0));
    expect(loopMm(even(1))).toBeCloseTo(19.494, 3);
    expect(chalk).toMatchObject({ stitches: 5, floats: [] });
    expect(chalk?.stitchesMm).toBeCloseTo(5 * 19.494, 2);
    expect(chalk?.carries.map(({ row, toRow, stitches, mm }) => [row, toRow, stitches, mm])).toEqual([
      [4, 5, 1, 9],
      [5, 6, 1, 9],
    ]);
    expect(main?.stitches).toBe(8 * 8 - 5);
    expect(main?.carries).toEqual([]);
    expect(main?.floats.map(({ row, first, last, mm }) => [row, labelOf(first), labelOf(last), mm])).toEqual([
      [4, 'L1', 'L1', 5],
      [5, 'L2', 'R1', 15],
      [6, 'L1', 'L1', 5],
    ]);
  });

  it('is what a wrapping strand takes: a loop for each wrap, the way between them, and two tails', () => {
    const [right, left] = knitted(band).wrapping;
    expect(wrappingMm(right ?? { wraps: [] }, even)).toBeCloseTo(2 * 150 + 2 * 19.494 + 2 * 4, 2);
    expect(wrappingMm(left ?? { wraps: [] }, even)).toBeCloseTo(2 * 150 + 19.494, 2);
    // Folded in two: up one edge from row 4 to 6, over 3 stitches, and one row up on the other edge.
    const folded = [
      { row: 4, needle: 1, edge: 'right' },
      { row: 5, needle: -2, edge: 'left' },
      { row: 6, needle: 1, edge: 'right' },
    ] as const;
    expect(wrappingMm({ wraps: folded }, even)).toBeCloseTo(2 * 150 + 3 * 19.494 + (3 * 5 + 4) + 2 * 4, 2);
  });

  it('goes sideways by the wider stitch where gauges change, and up by the height of each row', () => {
    const gauging: Gauging = (row) => (row < 3 ? { stitches: 20, rows: 25 } : { stitches: 25, rows: 50 });
    const way: Step[] = [
      { row: 2, needle: 4, does: 'knit' },
      { row: 4, needle: 1, does: 'knit' },
    ];
    expect(measureYarn({ way }, gauging, false).carries[0]?.mm).toBe(3 * 5 + 2 * 2);
  });

  // Common practice, no source: at most 8 rows and 25 mm up; 25 mm are 7 stitches of 28 in 10 cm (computed).
  it('is over a limit, or too far up to be carried', () => {
    const limit = { stitches: 9, mm: 25 };
    expect([7, 8].map((stitches) => isOverLimit(stitches, limit, [{ stitches: 28, rows: 40 }]))).toEqual([false, true]);
    expect([9, 10].map((stitches) => isOverLimit(stitches, { ...limit, mm: null }, [even(1)]))).toEqual([false, true]);
    expect([6, 7].map((rows) => isNearUp(even, 1, 1 + rows))).toEqual([true, false]);
    expect([8, 9].map((rows) => isNearUp(() => ({ stitches: 20, rows: 60 }), 1, 1 + rows))).toEqual([true, false]);
  });
});
