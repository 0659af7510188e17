/**
 * Laws of even shaping on pieces at random, looked at row by row. Common
 * practice, no source: what is given to cast on is cast on; one stitch at an
 * edge on a row; nothing on the last row, inside a folded hem, or on the row
 * that joins it.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgesAt, edgesOf, outlineOf, type Footing, type Shape } from '@shared/piece/index.ts';
import { outcome } from '@shared/problem/index.ts';

const count = (min: number, max: number) => fc.integer({ min, max });

const anyFooting: fc.Arbitrary<Footing> = fc.record({
  oddStitch: fc.constantFrom('left' as const, 'right' as const),
  offset: count(-20, 20),
  hemRows: fc.oneof(fc.constant(0), count(0, 30)),
});

const anyTapered = fc
  .record({ stitches: count(1, 120), by: count(-40, 40), rows: count(1, 90), straightRows: count(0, 12) })
  .map(({ by, ...shape }) => ({
    kind: 'tapered' as const,
    ...shape,
    stitchesAtTop: Math.max(1, shape.stitches + by),
  }));

const anyBody = fc
  .record({
    stitches: count(10, 120),
    waist: count(-20, 20),
    chest: count(-20, 30),
    rowsToWaist: count(0, 50),
    rowsToChest: count(0, 50),
    more: count(0, 30),
  })
  .map(({ waist, chest, more, ...shape }) => ({
    kind: 'body' as const,
    ...shape,
    stitchesAtWaist: Math.max(1, shape.stitches + waist),
    stitchesAtChest: Math.max(1, shape.stitches + waist + chest),
    rows: Math.max(1, shape.rowsToWaist + shape.rowsToChest + more),
  }));

/** How far each edge moves before a row, outwards. */
interface Move {
  readonly row: number;
  readonly left: number;
  readonly right: number;
}

function movesOf(shape: Shape, footing: Footing): Move[] | null {
  const made = outcome(() => outlineOf(shape, footing));
  if (!made.ok) {
    expect(made.problem.code).toBe('shaping-impossible');
    return null;
  }
  const outline = made.value;
  const moves: Move[] = [];
  for (let row = 2; row <= outline.rows; row++) {
    const [before, now] = [edgesAt(outline, row - 1), edgesAt(outline, row)];
    const [left, right] = [before.first - now.first, now.last - before.last];
    if (left !== 0 || right !== 0) moves.push({ row, left, right });
  }
  return moves;
}

/** The first row above the cast-on, or above a hem that folds and its joining row. */
const lowestOf = ({ hemRows }: Footing): number => (hemRows > 1 ? hemRows + 2 : 2);

function expectLaws(shape: Shape, footing: Footing, moves: readonly Move[]): void {
  expect(edgesAt(outlineOf(shape, footing), 1)).toEqual(edgesOf(shape.stitches, footing));
  for (const { row, left, right } of moves) {
    expect(row).toBeGreaterThanOrEqual(lowestOf(footing));
    expect(row).toBeLessThan(shape.rows);
    expect(Math.max(Math.abs(left), Math.abs(right))).toBe(1);
  }
}

describe('a tapered piece', () => {
  it('keeps the rules of shaping, or is refused because the rows do not suffice', () => {
    const seen = { shaped: 0, refused: 0, odd: 0, hemmed: 0, steep: 0 };
    fc.assert(
      fc.property(anyTapered, anyFooting, (shape, footing) => {
        const { stitches, stitchesAtTop, rows, straightRows } = shape;
        const difference = stitchesAtTop - stitches;
        const changes = Math.ceil(Math.abs(difference) / 2);
        const last = rows - Math.max(1, straightRows);
        const room = Math.max(0, last - lowestOf(footing) + 1);
        const moves = movesOf(shape, footing);
        expect(moves === null).toBe(changes > room);
        if (moves === null) {
          seen.refused++;
          return;
        }
        expectLaws(shape, footing, moves);
        expect(edgesAt(outlineOf(shape, footing), rows)).toEqual(edgesOf(stitchesAtTop, footing));
        for (const { row, left, right } of moves) {
          expect(row).toBeLessThanOrEqual(last);
          expect([0, Math.sign(difference)]).toContain(left);
          expect([0, Math.sign(difference)]).toContain(right);
        }
        const pairs = moves.filter(({ left, right }) => left === right);
        expect(pairs).toHaveLength(Math.floor(Math.abs(difference) / 2));
        expect(moves).toHaveLength(changes);
        // Intervals differ by one at most, the shorter first. Changes on most rows would begin too low, and wait a row.
        const foot = footing.hemRows > 1 ? footing.hemRows : 0;
        const from = 2 * pairs.length <= last - foot ? foot : lowestOf(footing) - 1;
        const intervals = pairs.map(({ row }, at) => row - (pairs[at - 1]?.row ?? from));
        expect(intervals).toEqual([...intervals].sort((a, b) => a - b));
        if (pairs.length > 0) {
          expect((pairs.at(-1) as Move).row).toBe(last);
          expect((intervals.at(-1) as number) - (intervals[0] as number)).toBeLessThanOrEqual(1);
        }
        seen.shaped += Number(moves.length > 0);
        seen.odd += Number(difference % 2 !== 0);
        seen.hemmed += Number(footing.hemRows > 1 && moves.length > 0);
        seen.steep += Number(pairs.length > room / 2);
      }),
      { numRuns: 5000 },
    );
    for (const times of Object.values(seen)) expect(times).toBeGreaterThan(100);
  });
});

describe('a body with a waist', () => {
  it('keeps the rules of shaping on the way to the waist and from there to the chest', () => {
    let shaped = 0;
    fc.assert(
      fc.property(anyBody, anyFooting, (shape, footing) => {
        const { stitchesAtWaist, stitchesAtChest, rowsToWaist, rowsToChest, rows } = shape;
        const moves = movesOf(shape, footing);
        if (moves === null) return;
        expectLaws(shape, footing, moves);
        const outline = outlineOf(shape, footing);
        if (rowsToWaist >= 1) expect(edgesAt(outline, rowsToWaist)).toEqual(edgesOf(stitchesAtWaist, footing));
        expect(edgesAt(outline, rows)).toEqual(edgesOf(stitchesAtChest, footing));
        for (const { row } of moves) expect(row).toBeLessThanOrEqual(rowsToWaist + rowsToChest);
        shaped += Number(moves.length > 0);
      }),
      { numRuns: 3000 },
    );
    expect(shaped).toBeGreaterThan(500);
  });
});
