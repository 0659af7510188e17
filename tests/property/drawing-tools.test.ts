import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  connectedCells,
  deleteColumns,
  deleteRows,
  ellipseCells,
  exchangeColours,
  insertColumns,
  insertRows,
  lineCells,
  mirrorAcross,
  mirrorUp,
  outlineCells,
  quarterTurn,
  rectangleCells,
  sameGrid,
  shiftAround,
  strokeCells,
  symmetricCells,
  type Cell,
  type Grid,
} from '@shared/grid/index.ts';

const cell = fc.record({ column: fc.integer({ min: -30, max: 30 }), row: fc.integer({ min: -30, max: 30 }) });
const grid = (colours = 2): fc.Arbitrary<Grid> =>
  fc
    .tuple(fc.integer({ min: 1, max: 14 }), fc.integer({ min: 1, max: 14 }))
    .chain(([width, height]) =>
      fc
        .uint8Array({ minLength: width * height, maxLength: width * height, max: colours - 1 })
        .map((cells) => ({ width, height, cells })),
    );

const keys = (cells: readonly Cell[]): string[] => cells.map(({ column, row }) => `${column},${row}`).sort();
const mirrored = ({ column, row }: Cell): Cell => ({ column: -column || 0, row });
const upsideDown = ({ column, row }: Cell): Cell => ({ column, row: -row || 0 });

describe('a straight line', () => {
  it('is the same from either end', () => {
    fc.assert(
      fc.property(cell, cell, (a, b) => {
        expect(keys(lineCells(a, b))).toEqual(keys(lineCells(b, a)));
      }),
    );
  });

  it('is mirrored when its ends are', () => {
    fc.assert(
      fc.property(cell, cell, (a, b) => {
        for (const flip of [mirrored, upsideDown]) {
          expect(keys(lineCells(flip(a), flip(b)))).toEqual(keys(lineCells(a, b).map(flip)));
        }
      }),
    );
  });

  it('keeps within half a cell of the ideal line and leaves no gap', () => {
    fc.assert(
      fc.property(cell, cell, (a, b) => {
        const across = b.column - a.column;
        const up = b.row - a.row;
        const steps = Math.max(Math.abs(across), Math.abs(up));
        for (const line of [lineCells(a, b), strokeCells(a, b)]) {
          expect(line[0]).toEqual(a);
          expect(line.at(-1)).toEqual(b);
          line.forEach(({ column, row }, i) => {
            if (steps > 0) {
              const off = Math.abs((column - a.column) * up - (row - a.row) * across) / steps;
              expect(off).toBeLessThanOrEqual(0.5);
            }
            const before = line[i - 1];
            if (before) {
              expect(Math.max(Math.abs(column - before.column), Math.abs(row - before.row))).toBe(1);
            }
          });
        }
        expect(strokeCells(a, b)).toHaveLength(steps + 1);
      }),
    );
  });
});

describe('an ellipse', () => {
  const box = fc.record({
    column: fc.constant(0),
    row: fc.constant(0),
    width: fc.integer({ min: 1, max: 40 }),
    height: fc.integer({ min: 1, max: 40 }),
  });

  it('is its own mirror image both ways, filled or not', () => {
    fc.assert(
      fc.property(box, fc.boolean(), (shape, isFilled) => {
        const cells = ellipseCells(shape, isFilled);
        const across = cells.map(({ column, row }) => ({ column: shape.width - 1 - column, row }));
        const up = cells.map(({ column, row }) => ({ column, row: shape.height - 1 - row }));
        expect(keys(across)).toEqual(keys(cells));
        expect(keys(up)).toEqual(keys(cells));
      }),
    );
  });

  it('touches all four sides of its box and covers about π ⁄ 4 of a large one', () => {
    fc.assert(
      fc.property(box, (shape) => {
        const cells = ellipseCells(shape, true);
        expect(Math.min(...cells.map((c) => c.column))).toBe(0);
        expect(Math.max(...cells.map((c) => c.column))).toBe(shape.width - 1);
        expect(Math.min(...cells.map((c) => c.row))).toBe(0);
        expect(Math.max(...cells.map((c) => c.row))).toBe(shape.height - 1);
        if (shape.width >= 12 && shape.height >= 12) {
          const share = cells.length / (shape.width * shape.height);
          expect(Math.abs(share - Math.PI / 4)).toBeLessThan(0.06);
        }
      }),
    );
  });
});

describe('a rectangle', () => {
  it('has a rim of twice its sides less the corners', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 30 }), fc.integer({ min: 2, max: 30 }), (width, height) => {
        const box = { column: 3, row: 4, width, height };
        expect(rectangleCells(box, true)).toHaveLength(width * height);
        expect(rectangleCells(box, false)).toHaveLength(2 * (width + height) - 4);
      }),
    );
  });
});

describe('filling', () => {
  /** Areas by union–find, an independent way to the same answer (Tarjan 1975, from memory). */
  function areaByUnion({ width, height, cells }: Grid, seed: number): number[] {
    const parent = Int32Array.from(cells, (_, i) => i);
    const find = (i: number): number => {
      let at = i;
      while (parent[at] !== at) at = parent[at] as number;
      return at;
    };
    for (let i = 0; i < cells.length; i++) {
      if (i % width < width - 1 && cells[i] === cells[i + 1]) parent[find(i)] = find(i + 1);
      if (i < width * (height - 1) && cells[i] === cells[i + width]) parent[find(i)] = find(i + width);
    }
    return [...cells.keys()].filter((i) => find(i) === find(seed));
  }

  it('takes what union–find joins', () => {
    fc.assert(
      fc.property(grid(3), fc.nat(), (drawing, at) => {
        const index = at % drawing.cells.length;
        const seed = { column: index % drawing.width, row: Math.floor(index / drawing.width) };
        const found = connectedCells(drawing, seed).sort((a, b) => a - b);
        expect(found).toEqual(areaByUnion(drawing, index));
      }),
    );
  });

  it('outlines a single cell with the eight around it', () => {
    const drawing: Grid = { width: 5, height: 5, cells: new Uint8Array(25) };
    drawing.cells[12] = 1;
    expect(outlineCells(drawing, 0)).toEqual([6, 7, 8, 11, 13, 16, 17, 18]);
  });
});

describe('turning and moving a whole drawing', () => {
  it('comes back by the inverse', () => {
    fc.assert(
      fc.property(
        grid(4),
        fc.integer({ min: -20, max: 20 }),
        fc.integer({ min: -20, max: 20 }),
        fc.nat(),
        (drawing, right, up, at) => {
          const same = (other: Grid): void => expect(sameGrid(other, drawing)).toBe(true);
          same(mirrorAcross(mirrorAcross(drawing)));
          same(mirrorUp(mirrorUp(drawing)));
          same(quarterTurn(quarterTurn(quarterTurn(quarterTurn(drawing)))));
          same(shiftAround(shiftAround(drawing, right, up), -right, -up));
          same(exchangeColours(exchangeColours(drawing, 0, 1), 0, 1));
          const column = at % (drawing.width + 1);
          same(deleteColumns(insertColumns(drawing, column, 3, 1), column, 3));
          const row = at % (drawing.height + 1);
          same(deleteRows(insertRows(drawing, row, 2, 1), row, 2));
        },
      ),
    );
  });

  it('turns half by two quarter turns, as by both mirrors', () => {
    fc.assert(
      fc.property(grid(4), (drawing) => {
        expect(sameGrid(quarterTurn(quarterTurn(drawing)), mirrorAcross(mirrorUp(drawing)))).toBe(true);
      }),
    );
  });

  it('turns clockwise as the chart is seen: the bottom left corner goes to the top left', () => {
    const drawing: Grid = { width: 3, height: 2, cells: Uint8Array.from([1, 0, 0, 0, 0, 0]) };
    const turned = quarterTurn(drawing);
    expect([turned.width, turned.height]).toEqual([2, 3]);
    expect(turned.cells[2 * 2 + 0]).toBe(1);
  });
});

describe('live symmetry', () => {
  it('paints the same set whichever of its cells is painted', () => {
    fc.assert(
      fc.property(
        grid(),
        fc.nat(),
        fc.constantFrom('left-right', 'up-down', 'both', 'turning'),
        (drawing, at, symmetry) => {
          const index = at % drawing.cells.length;
          const start = { column: index % drawing.width, row: Math.floor(index / drawing.width) };
          const cells = symmetricCells(drawing, start, symmetry);
          // A quarter turn of an oblong may leave it; then the partners differ in how many lie on it.
          if (symmetry === 'turning' && drawing.width !== drawing.height) return;
          for (const other of cells) expect(keys(symmetricCells(drawing, other, symmetry))).toEqual(keys(cells));
        },
      ),
    );
  });
});
