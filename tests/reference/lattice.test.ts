import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grid } from '@shared/grid/index.ts';
import { latticeOf } from '@shared/motif/repeat/index.ts';

/** The binary grid whose cells are the bits of `bits`. */
function binaryGrid(width: number, height: number, bits: number): Grid {
  return { width, height, cells: Uint8Array.from({ length: width * height }, (_, i) => (bits >> i) & 1) };
}

function countPrimitive(width: number, height: number): number {
  let count = 0;
  for (let bits = 0; bits < 2 ** (width * height); bits++) {
    const { across, rows } = latticeOf(binaryGrid(width, height, bits));
    if (across * rows === width * height) count++;
  }
  return count;
}

/** The smallest cell by trying every turn of rows and columns: the area is cells ÷ turns that change nothing. */
function areaByTrying(grid: Grid): number {
  const { width, height, cells } = grid;
  let unchanged = 0;
  for (let up = 0; up < height; up++) {
    for (let right = 0; right < width; right++) {
      const isSame = cells.every((cell, index) => {
        const column = (index % width) + right;
        const row = Math.floor(index / width) + up;
        return cell === cells[(row % height) * width + (column % width)];
      });
      if (isSame) unchanged++;
    }
  }
  return (width * height) / unchanged;
}

describe('counting drawings that no turn of rows and columns leaves unchanged', () => {
  // OEIS A323860, rows n, columns k = 1 … 4
  const published = [
    [2, 2, 6, 12],
    [2, 8, 54, 216],
    [6, 54, 486, 4020],
    [12, 216, 4020, 64800],
  ];
  it.each(published.flatMap((row, n) => row.map((count, k) => ({ height: n + 1, width: k + 1, count }))))(
    '$height × $width: $count',
    ({ height, width, count }) => expect(countPrimitive(width, height)).toBe(count),
  );

  // OEIS A323860, further terms
  it.each([
    { height: 1, width: 5, count: 30 },
    { height: 2, width: 5, count: 990 },
    { height: 3, width: 5, count: 32730 },
    { height: 2, width: 6, count: 3912 },
    { height: 2, width: 7, count: 16254 },
  ])('$height × $width: $count', ({ height, width, count }) => expect(countPrimitive(width, height)).toBe(count));
});

describe('the smallest cell against trying every turn', () => {
  it('agrees on every binary drawing up to 4 × 4', () => {
    for (let height = 1; height <= 4; height++) {
      for (let width = 1; width <= 4; width++) {
        for (let bits = 0; bits < 2 ** (width * height); bits++) {
          const grid = binaryGrid(width, height, bits);
          const { across, rows } = latticeOf(grid);
          if (across * rows !== areaByTrying(grid)) expect.fail(`${width} × ${height}, bits ${bits.toString(2)}`);
        }
      }
    }
  });

  it('agrees on random drawings up to 24 × 24 with a planted step', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 24 }),
        fc.integer({ min: 1, max: 24 }),
        fc.nat(23),
        fc.nat(23),
        fc.infiniteStream(fc.boolean()),
        (width, height, right, up, bits) => {
          // Every cell is drawn as the first one that the planted move leads to it from.
          const cells = new Uint8Array(width * height).fill(2);
          for (let index = 0; index < cells.length; index++) {
            const value = bits.next().value ? 1 : 0;
            for (let at = index; cells[at] === 2;) {
              cells[at] = value;
              const column = ((at % width) + right) % width;
              at = ((Math.floor(at / width) + up) % height) * width + column;
            }
          }
          const grid = { width, height, cells };
          const { across, rows } = latticeOf(grid);
          expect(across * rows).toBe(areaByTrying(grid));
        },
      ),
      { numRuns: 300, seed: 24 },
    );
  });
});
