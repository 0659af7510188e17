import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grid } from '@shared/grid/index.ts';
import { latticeOf, nearRepeat, trueRepeat } from '@shared/motif/repeat/index.ts';

/** A drawing that is the pattern `cell` of size a × b, moved by s for every b rows, over width × height. */
function plant(cell: Grid, shift: number, width: number, height: number): Grid {
  const { width: a, height: b } = cell;
  const cells = Uint8Array.from({ length: width * height }, (_, index) => {
    const row = Math.floor(index / width);
    const column = (index % width) - shift * Math.floor(row / b);
    return cell.cells[(row % b) * a + (((column % a) + a) % a)] as number;
  });
  return { width, height, cells };
}

const grids = (most: number, colours: number): fc.Arbitrary<Grid> =>
  fc
    .tuple(fc.integer({ min: 1, max: most }), fc.integer({ min: 1, max: most }))
    .chain(([width, height]) =>
      fc
        .uint8Array({ minLength: width * height, maxLength: width * height, max: colours - 1 })
        .map((cells) => ({ width, height, cells })),
    );

const greatest = (a: number, b: number): number => (b === 0 ? a : greatest(b, a % b));

describe('a planted lattice', () => {
  it('is found, or a finer one that holds it', () => {
    fc.assert(
      fc.property(grids(6, 3), fc.nat(5), (cell, wanted) => {
        const shift = wanted % cell.width;
        const turns = cell.width / greatest(cell.width, shift === 0 ? cell.width : shift);
        const tile = plant(cell, shift, cell.width * 2, cell.height * turns * 2);
        const found = latticeOf(tile);
        // The planted translations must lie in the found lattice.
        expect(cell.width % found.across).toBe(0);
        expect(cell.height % found.rows).toBe(0);
        const moved = (cell.height / found.rows) * found.shift;
        expect((moved - shift) % found.across === 0 || ((moved - shift) % found.across) + found.across === 0).toBe(
          true,
        );
        // And the found step must leave the drawing unchanged.
        tile.cells.forEach((value, index) => {
          const row = (Math.floor(index / tile.width) + found.rows) % tile.height;
          const column = ((index % tile.width) + found.shift) % tile.width;
          if (tile.cells[row * tile.width + column] !== value) expect.fail(`cell ${index}`);
        });
      }),
      { numRuns: 400 },
    );
  });
});

/** Stands for a choice that is still to be made. */
const OPEN = 9;

describe('a near repeat', () => {
  it('names exactly the cells that were spoilt', () => {
    fc.assert(
      fc.property(
        grids(7, 2).filter((tile) => tile.width >= 3 && tile.height >= 3),
        fc.integer({ min: 3, max: 6 }),
        fc.integer({ min: 3, max: 6 }),
        fc.nat(),
        (tile, across, up, where) => {
          const clean = plant(tile, 0, tile.width * across, tile.height * up);
          const { width: p, height: q } = trueRepeat(clean);
          const spoilt = clean.cells.slice();
          const at = where % spoilt.length;
          spoilt[at] = 1 - (spoilt[at] as number);
          const grid = { ...clean, cells: spoilt };
          const figure = spoilt.filter((cell) => cell !== 0).length;
          fc.pre(spoilt.length >= 50 && figure >= 8);
          const near = nearRepeat(grid, 0, trueRepeat(grid));
          expect(near).not.toBeNull();
          expect(p % (near?.width ?? 0) === 0 || (near?.width ?? 0) <= p).toBe(true);
          expect(near?.height).toBeLessThanOrEqual(q);
          if (near?.width === p && near.height === q) {
            expect(near.slips).toEqual([
              { column: at % grid.width, row: Math.floor(at / grid.width), expected: clean.cells[at] },
            ]);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('lists the cells that are not what most of their copies are, row by row', () => {
    fc.assert(
      fc.property(
        grids(6, 3),
        fc.integer({ min: 4, max: 24 }),
        fc.integer({ min: 4, max: 24 }),
        fc.nat(),
        fc.nat(),
        (tile, width, height, first, second) => {
          const clean = plant(tile, 0, width, height);
          const cells = clean.cells.slice();
          for (const where of [first, second]) cells[where % cells.length] = where % 3;
          const grid = { width, height, cells };
          const near = nearRepeat(grid, 0, trueRepeat(grid));
          if (near === null) return;
          const isSlip = new Map(near.slips.map(({ column, row, expected }) => [row * width + column, expected]));
          const places = near.slips.map(({ column, row }) => row * width + column);
          expect(places).toEqual([...places].sort((a, b) => a - b));
          for (let index = 0; index < cells.length; index++) {
            const copies = [0, 0, 0];
            for (let row = Math.floor(index / width) % near.height; row < height; row += near.height) {
              for (let column = (index % width) % near.width; column < width; column += near.width) {
                const cell = cells[row * width + column] as number;
                copies[cell] = (copies[cell] as number) + 1;
              }
            }
            const most = Math.max(...copies);
            const isOpen = copies.filter((count) => count === most).length > 1;
            expect(isSlip.get(index) === null).toBe(isOpen);
            if (isOpen) continue;
            const expected = isSlip.get(index) ?? (cells[index] as number);
            expect(copies[expected]).toBe(most);
          }
        },
      ),
      { numRuns: 400, seed: 25 },
    );
  });

  it('mending the slips makes the repeat exact', () => {
    fc.assert(
      fc.property(grids(24, 2), (grid) => {
        const near = nearRepeat(grid, 0, trueRepeat(grid));
        if (near === null) return;
        const cells = grid.cells.slice();
        for (const slip of near.slips) cells[slip.row * grid.width + slip.column] = slip.expected ?? OPEN;
        const mended = { ...grid, cells };
        for (let row = 0; row < grid.height; row++) {
          for (let column = 0; column < grid.width; column++) {
            const home = cells[(row % near.height) * grid.width + (column % near.width)];
            expect(mended.cells[row * grid.width + column]).toBe(home);
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});
