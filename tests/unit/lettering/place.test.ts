/** Where letters go on a drawing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridFromText, makeGrid, type Cell, type Grid } from '@shared/grid/index.ts';
import { nearestFree, placeLetters } from '@shared/motif/lettering/index.ts';
import { letteringWords } from '@shared/words/lettering.ts';
import { drawing } from '../../property/drawings.ts';

const INK = gridFromText(['#.', '##'], '.#');
const near = (column: number, row: number): Cell => ({ column, row });

/** All places of a size, by looking at every cell of each: the nearest first, of these the lowest and leftmost. */
function freeByEye(grid: Grid, width: number, height: number, from: Cell, apart: number): Cell[] {
  const places: (Cell & { far: number })[] = [];
  for (let row = 0; row + height <= grid.height; row++) {
    for (let column = 0; column + width <= grid.width; column++) {
      let isFree = true;
      grid.cells.forEach((colour, index) => {
        const [x, y] = [index % grid.width, Math.floor(index / grid.width)];
        const isIn = x >= column - apart && x < column + width + apart && y >= row - apart && y < row + height + apart;
        if (isIn && colour !== 0) isFree = false;
      });
      if (isFree) places.push({ column, row, far: Math.abs(column - from.column) + Math.abs(row - from.row) });
    }
  }
  return places.sort((a, b) => a.far - b.far || a.row - b.row || a.column - b.column);
}

describe('letters on a drawing', () => {
  it('go to the nearest place that is free, as one who looks at each would find', () => {
    const size = fc.integer({ min: 1, max: 4 });
    const cursor = fc.record({ column: fc.nat(8), row: fc.nat(8) });
    const sparse = drawing({ mostWidth: 9, mostHeight: 9 }).map((grid) => ({
      ...grid,
      cells: grid.cells.map((cell, at) => (at % 4 === 0 ? cell : 0)),
    }));
    fc.assert(
      fc.property(sparse, size, size, cursor, fc.nat(1), (grid, width, height, from, apart) => {
        const [first] = freeByEye(grid, width, height, from, apart);
        const expected = first ? { column: first.column, row: first.row } : null;
        expect(nearestFree(grid, 0, { width, height }, from, apart)).toEqual(expected);
      }),
    );
  });

  it('stay at the cursor where nothing is drawn, and keep a cell from the figure where they can', () => {
    const free = placeLetters(makeGrid(6, 5), 0, INK, near(2, 1), false);
    expect(free).toEqual({ at: near(2, 1), covered: 0, why: 'at-cursor' });
    const beside = placeLetters(gridFromText(['......', '......', '#.....'], '.#'), 0, INK, near(0, 0), false);
    expect(beside).toEqual({ at: near(2, 0), covered: 0, why: 'nearest-free' });
    // With no room for that, close to it.
    const close = placeLetters(gridFromText(['...', '#..'], '.#'), 0, INK, near(0, 0), false);
    expect(close).toEqual({ at: near(1, 0), covered: 0, why: 'nearest-free' });
  });

  it('lie whole at the cursor over what is drawn where nothing is free, which is said', () => {
    const full = placeLetters(makeGrid(4, 3, 1), 0, INK, near(3, 2), false);
    expect(full).toEqual({ at: near(2, 1), covered: 3, why: 'nothing-free' });
    if (full.why === 'too-large') throw new Error('It does not fit');
    expect(letteringWords.placed(full)).toBe(
      'There is no free place of its size on the chart. It goes to row 2, stitch 3, over 3 drawn cells.',
    );
  });

  it('stand in the middle where that is asked, the odd cell at the right and at the top', () => {
    const middle = placeLetters(makeGrid(7, 5), 0, INK, near(0, 0), true);
    expect(middle).toEqual({ at: near(2, 1), covered: 0, why: 'centred' });
    if (middle.why === 'too-large') throw new Error('It does not fit');
    expect(letteringWords.placed(middle)).toBe('It goes to the middle of the chart, row 2, stitch 3.');
  });

  it('that are too large tell what is left off on which side', () => {
    const small = makeGrid(1, 1);
    const cut = placeLetters(small, 0, gridFromText(['####', '####'], '.#'), near(0, 0), false);
    expect(cut).toEqual({ at: near(0, 0), covered: 0, why: 'too-large', left: 0, right: 3, bottom: 0, top: 1 });
    const middle = placeLetters(small, 0, gridFromText(['####', '####'], '.#'), near(0, 0), true);
    expect(middle).toMatchObject({ left: 2, right: 1, bottom: 1, top: 0 });
    if (cut.why !== 'too-large') throw new Error('It fits');
    expect(letteringWords.tooLarge(1, 1, cut)).toBe(
      'It is larger than the motif, 1 stitch × 1 row. Left off: 3 stitches at the right and 1 row at the top.',
    );
  });
});
