import { describe, expect, it } from 'vitest';
import { makeGrid, type Grid } from '@shared/grid/index.ts';
import { nearRepeat, trueRepeat } from '@shared/motif/repeat/index.ts';

/** Stripes one stitch wide on 20 × 10, with cells of the other yarn at so many places. */
function stripesWithSlips(many: number): Grid {
  const grid = makeGrid(20, 10);
  for (let at = 0; at < grid.cells.length; at++) grid.cells[at] = (at % 20) % 2;
  for (const at of [23, 88, 153, 57, 186].slice(0, many)) grid.cells[at] = 1 - (grid.cells[at] as number);
  return grid;
}

describe('a near repeat', () => {
  it.each([1, 4])('is broken by at most 2 cells in 100: %i of 200 are slips', (many) => {
    const grid = stripesWithSlips(many);
    const near = nearRepeat(grid, 0, trueRepeat(grid));
    expect(near).toMatchObject({ width: 2, height: 1 });
    expect(near?.slips).toHaveLength(many);
  });

  it('is none where more break it', () => {
    const grid = stripesWithSlips(5);
    expect(nearRepeat(grid, 0, trueRepeat(grid))).toBeNull();
  });
});
