import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grid } from '@shared/grid/index.ts';
import { blankEdges, lineHashes, lineHashesAgain, measure, trueRepeat } from '@shared/motif/repeat/index.ts';
import { drawing, tiledDrawing } from './drawings.ts';

/** The definition, cell by cell. */
function repeatByEye({ width, height, cells }: Grid): { width: number; height: number } {
  const repeats = (columns: number, rows: number): boolean => {
    for (let row = 0; row + rows < height; row++) {
      for (let column = 0; column + columns < width; column++) {
        if (cells[row * width + column] !== cells[(row + rows) * width + column + columns]) return false;
      }
    }
    return true;
  };
  let across = 1;
  while (across * 2 <= width && !repeats(across, 0)) across++;
  let up = 1;
  while (up * 2 <= height && !repeats(0, up)) up++;
  return { width: across * 2 <= width ? across : width, height: up * 2 <= height ? up : height };
}

function blankByEye(grid: Grid, ground: number): ReturnType<typeof blankEdges> {
  const figure = [...grid.cells.keys()].filter((index) => grid.cells[index] !== ground);
  if (figure.length === 0) return null;
  const columns = figure.map((index) => index % grid.width);
  const rows = figure.map((index) => Math.floor(index / grid.width));
  return {
    left: Math.min(...columns),
    right: grid.width - 1 - Math.max(...columns),
    bottom: Math.min(...rows),
    top: grid.height - 1 - Math.max(...rows),
  };
}

describe('the true repeat of a drawing', () => {
  it.each([
    ['drawn at random', drawing({ mostWidth: 12, mostHeight: 12 })],
    ['tiled, and cut off anywhere', tiledDrawing],
  ])('is what the definition says, %s', (_, drawings) => {
    fc.assert(
      fc.property(drawings, (grid) => {
        const byEye = repeatByEye(grid);
        expect(trueRepeat(grid)).toEqual({
          ...byEye,
          dividesAcross: grid.width % byEye.width === 0,
          dividesUp: grid.height % byEye.height === 0,
        });
      }),
      { numRuns: 400, seed: 20 },
    );
  });

  it('is never larger than a tile that was drawn twice or more', () => {
    fc.assert(
      fc.property(drawing({ mostWidth: 6, mostHeight: 6 }), fc.integer({ min: 2, max: 4 }), (tile, times) => {
        const width = tile.width * times;
        const cells = Uint8Array.from({ length: width * tile.height }, (_, index) => {
          const row = Math.floor(index / width);
          return tile.cells[row * tile.width + (index % tile.width)] as number;
        });
        const repeat = trueRepeat({ width, height: tile.height, cells });
        expect(tile.width % repeat.width).toBe(0);
        expect(repeat.dividesAcross).toBe(true);
      }),
      { numRuns: 200, seed: 21 },
    );
  });
});

describe('blank edges of a drawing', () => {
  it('are what lies outside every figure cell', () => {
    fc.assert(
      fc.property(drawing({ mostWidth: 8, mostHeight: 8 }), fc.integer({ min: 0, max: 2 }), (grid, ground) => {
        expect(blankEdges(grid, ground)).toEqual(blankByEye(grid, ground));
        expect(measure(grid, ground)).toMatchObject({ ground, width: grid.width, height: grid.height });
      }),
      { numRuns: 300, seed: 22 },
    );
  });
});

describe('the hashes of rows and columns', () => {
  it('are after cells were painted those of the drawing as it is', () => {
    const anyCells = fc.array(fc.record({ cell: fc.nat(), yarn: fc.nat({ max: 3 }) }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(drawing({ mostWidth: 12, mostHeight: 12 }), anyCells, (before, cells) => {
        const grid = { ...before, cells: before.cells.slice() };
        for (const { cell, yarn } of cells) grid.cells[cell % grid.cells.length] = yarn;
        const rows = new Set(cells.map(({ cell }) => Math.floor((cell % grid.cells.length) / grid.width)));
        const hashes = lineHashes(before);
        expect(lineHashesAgain(grid, { grid: before, hashes }, [...rows])).toEqual(lineHashes(grid));
        // What was known of the drawing before is still known.
        expect(hashes).toEqual(lineHashes(before));
      }),
    );
  });
});
