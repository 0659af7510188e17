import { describe, expect, it } from 'vitest';
import { gridFromText, quarterTurn } from '@shared/grid/index.ts';
import { blocksOf, latticeOf, measure, type Block } from '@shared/motif/repeat/index.ts';
import { columnLines, courseLines } from '../../../src-renderer/motif/drawing/steps-and-cuts.ts';

/** The blocks of a drawing that is one true repeat, topmost row first; `.` is ground. */
function blocksIn(...rows: string[]): readonly Block[] {
  const tile = gridFromText(rows, '.XO');
  return blocksOf(tile, latticeOf(tile), 0);
}

// Worked by hand. A bar of 6 stitches in a brick of 8 × 2, with ground all round it. Columns of 4 stitches have an edge
// in one bar or the other wherever they start: at columns 0 and 4, the upper bar goes on over the chart's edge.
const BRICKS = ['........', 'XXX..XXX', '........', '.XXXXXX.'];

describe('the blocks of a stepped drawing', () => {
  it('are bricks first where a half drop would cut the figure', () => {
    expect(blocksIn(...BRICKS)).toEqual([
      { laid: 'courses', width: 8, height: 2, step: 4, column: 0, row: 0, cuts: 0, corners: 0 },
      { laid: 'columns', width: 4, height: 4, step: 2, column: 0, row: 0, cuts: 1, corners: 0 },
    ]);
  });

  it('are a half drop first where bricks would cut the figure: the same turned by a quarter', () => {
    const tile = quarterTurn(gridFromText(BRICKS, '.X'));
    expect(blocksOf(tile, latticeOf(tile), 0)).toMatchObject([
      { laid: 'columns', width: 2, height: 8, step: 4, cuts: 0, corners: 0 },
      { laid: 'courses', width: 4, height: 4, step: 2, cuts: 1, corners: 0 },
    ]);
  });

  it('are a half drop first where either leaves the figure whole', () => {
    expect(blocksIn('....', '..X.', '....', 'X...')).toMatchObject([
      { laid: 'columns', cuts: 0, corners: 0 },
      { laid: 'courses', cuts: 0, corners: 0 },
    ]);
  });

  it('are chosen by cells that touch at corners where as many sides are cut', () => {
    // Worked by hand: slanting lines of 5 cells, no two side by side. Courses of 6 rows hold a line with a blank row above
    // it; columns of 4 stitches part one of its four corners wherever they start.
    const line = ['.....X..', '....X...', '...X....', '..X.....', '.X......'];
    const moved = ['.X......', 'X.......', '.......X', '......X.', '.....X..'];
    expect(blocksIn('........', ...moved, '........', ...line)).toMatchObject([
      { laid: 'courses', cuts: 0, corners: 0 },
      { laid: 'columns', cuts: 0, corners: 1 },
    ]);
  });

  it('count yarns that touch as one figure', () => {
    expect(blocksIn('........', 'XOX..OXO', '........', '.OXOXOX.')).toMatchObject([
      { laid: 'courses', cuts: 0 },
      { laid: 'columns', cuts: 1 },
    ]);
  });

  it('is one block where copies stand straight, and starts in the ground', () => {
    // Worked by hand: figure in columns 0 and 3 and rows 0 and 1, so it is whole in a block that starts at column 1 or 2 and row 0 or 2.
    expect(blocksIn('....', 'X..X', 'X..X')).toEqual([
      { laid: 'straight', width: 4, height: 3, step: 0, column: 1, row: 0, cuts: 0, corners: 0 },
    ]);
    expect(measure(gridFromText(['....', 'X..X', 'X..X'], '.X'), 0).blocks).toEqual([]);
  });

  it('cannot leave a stripe whole that goes all the way across', () => {
    expect(blocksIn('.', 'X')).toMatchObject([{ laid: 'straight', cuts: 1 }]);
  });
});

describe('the borders that are marked', () => {
  const repeat = { width: 8, height: 8, dividesAcross: true, dividesUp: true };
  const block = { cuts: 0, corners: 0 };

  it('are those of two courses, from where a block starts', () => {
    const brick: Block = { ...block, laid: 'courses', width: 8, height: 4, step: 4, column: 3, row: 1 };
    expect(courseLines(brick, repeat)).toEqual([
      { column: 0, row: 1, width: 8, height: 0 },
      { column: 3, row: 1, width: 0, height: 4 },
      { column: 0, row: 5, width: 8, height: 0 },
      { column: 7, row: 5, width: 0, height: 3 },
    ]);
  });

  it('are those of two columns of blocks, and none along the edge of the chart', () => {
    const drop: Block = { ...block, laid: 'columns', width: 4, height: 8, step: 4, column: 0, row: 0 };
    expect(columnLines(drop, repeat)).toEqual([
      { column: 4, row: 0, width: 0, height: 8 },
      { column: 4, row: 4, width: 4, height: 0 },
    ]);
  });
});
