import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyPatch,
  composePatches,
  connectedCells,
  gridFromText,
  gridToText,
  invertPatch,
  patchCells,
  type Grid,
  type Patch,
} from '@shared/grid/index.ts';
import { drawing } from './drawings.ts';

const RUNS = { numRuns: 300, seed: 30 };

/** A drawing and cells to set in it, some of them more than once. */
const edited = drawing({ mostWidth: 7, mostHeight: 7 }).chain((grid) =>
  fc.record({ grid: fc.constant(grid), first: strokes(grid), second: strokes(grid) }),
);

function strokes(grid: Grid): fc.Arbitrary<[index: number, to: number][]> {
  return fc.array(fc.tuple(fc.nat(grid.cells.length - 1), fc.nat(2)), { maxLength: 12 });
}

/** The edit as a person would make it: one cell after the other. */
function painted(grid: Grid, cells: readonly (readonly [number, number])[]): Grid {
  const result = { ...grid, cells: grid.cells.slice() };
  for (const [index, to] of cells) result.cells[index] = to;
  return result;
}

describe('an edit of cells', () => {
  it('does what painting the cells one by one does, and is undone by its inverse', () => {
    fc.assert(
      fc.property(edited, ({ grid, first }) => {
        const before = grid.cells.slice();
        const patch = patchCells(grid, first);
        const after = applyPatch(grid, patch);
        expect(after).toEqual(painted(grid, first));
        expect(applyPatch(after, invertPatch(grid, patch))).toEqual(grid);
        expect(grid.cells).toEqual(before);
      }),
      RUNS,
    );
  });

  it('names only cells that change, each once, in order', () => {
    fc.assert(
      fc.property(edited, ({ grid, first }) => {
        const { at, to } = patchCells(grid, first);
        at.forEach((index, i) => {
          expect(to[i]).not.toBe(grid.cells[index]);
          if (i > 0) expect(index).toBeGreaterThan(at[i - 1] as number);
        });
      }),
      RUNS,
    );
  });

  it('and the next one make one edit that does both', () => {
    fc.assert(
      fc.property(edited, ({ grid, first, second }) => {
        const one = patchCells(grid, first);
        const between = applyPatch(grid, one);
        const other = patchCells(between, second);
        const both = composePatches(one, other);
        expect(applyPatch(grid, both)).toEqual(applyPatch(between, other));
        const back = composePatches(invertPatch(between, other), invertPatch(grid, one));
        expect(applyPatch(applyPatch(grid, both), back)).toEqual(grid);
      }),
      RUNS,
    );
  });

  it('outside the drawing is refused', () => {
    const grid: Grid = { width: 2, height: 2, cells: new Uint8Array(4) };
    expect(() => patchCells(grid, [[4, 1]])).toThrow(RangeError);
    expect(() => patchCells(grid, [[-1, 1]])).toThrow(RangeError);
    const outside: Patch = { at: Uint32Array.of(4), to: Uint8Array.of(1) };
    expect(() => applyPatch(grid, outside)).toThrow(RangeError);
  });
});

describe('a chart in text', () => {
  it('comes back the same', () => {
    fc.assert(
      fc.property(drawing({ mostWidth: 9, mostHeight: 9 }), (grid) => {
        expect(gridFromText(gridToText(grid, '.Xo'), '.Xo')).toEqual(grid);
      }),
      RUNS,
    );
  });
});

describe('filling from a cell', () => {
  it('reaches what can be walked to over cells of its colour, side by side', () => {
    fc.assert(
      fc.property(drawing({ mostWidth: 8, mostHeight: 8, colours: 2 }), fc.nat(), (grid, at) => {
        const seed = at % grid.cells.length;
        const found = connectedCells(grid, { column: seed % grid.width, row: Math.floor(seed / grid.width) });
        expect(new Set(found).size).toBe(found.length);
        expect(new Set(found)).toEqual(walkable(grid, seed));
      }),
      RUNS,
    );
  });

  it('from outside the drawing reaches nothing', () => {
    const grid: Grid = { width: 2, height: 2, cells: new Uint8Array(4) };
    expect(connectedCells(grid, { column: 2, row: 0 })).toEqual([]);
    expect(connectedCells(grid, { column: 0, row: -1 })).toEqual([]);
  });
});

/** Grows from the seed until nothing more is added. */
function walkable(grid: Grid, seed: number): Set<number> {
  const reached = new Set([seed]);
  for (let size = 0; size !== reached.size;) {
    size = reached.size;
    for (let index = 0; index < grid.cells.length; index++) {
      if (grid.cells[index] !== grid.cells[seed]) continue;
      const column = index % grid.width;
      const beside = [
        column > 0 ? index - 1 : -1,
        column < grid.width - 1 ? index + 1 : -1,
        index - grid.width,
        index + grid.width,
      ];
      if (beside.some((neighbour) => reached.has(neighbour))) reached.add(index);
    }
  }
  return reached;
}
