/** Whole drawings turned, mirrored, moved, and made wider or taller inside. Each returns a new grid. */
import { cellAt, makeGrid } from './grid.ts';
import type { Grid } from './model.ts';

/** A grid of the given size whose cell (column, row) is `from(column, row)`. */
function build(width: number, height: number, from: (column: number, row: number) => number): Grid {
  const grid = makeGrid(width, height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) grid.cells[row * width + column] = from(column, row);
  }
  return grid;
}

/** Left and right exchanged. Its own inverse. */
export function mirrorAcross(grid: Grid): Grid {
  return build(grid.width, grid.height, (column, row) => cellAt(grid, grid.width - 1 - column, row));
}

/** Top and bottom exchanged. Its own inverse. */
export function mirrorUp(grid: Grid): Grid {
  return build(grid.width, grid.height, (column, row) => cellAt(grid, column, grid.height - 1 - row));
}

/** A quarter turn clockwise, as seen on the chart; four of them change nothing. */
export function quarterTurn(grid: Grid): Grid {
  // Row 0 is the bottom: what was at the top (last row) comes to the right.
  return build(grid.height, grid.width, (column, row) => cellAt(grid, grid.width - 1 - row, column));
}

/** Moved right by `columns` and up by `rows`; what leaves on one side comes in on the other. */
export function shiftAround(grid: Grid, columns: number, rows: number): Grid {
  const { width, height } = grid;
  return build(width, height, (column, row) =>
    cellAt(grid, modulo(column - columns, width), modulo(row - rows, height)),
  );
}

/** `count` columns of `fill` put in before column `at` (0 … width). Throws `motif-too-large`. */
export function insertColumns(grid: Grid, at: number, count: number, fill: number): Grid {
  assertBetween(at, 0, grid.width);
  return build(grid.width + count, grid.height, (column, row) => {
    if (column < at) return cellAt(grid, column, row);
    return column < at + count ? fill : cellAt(grid, column - count, row);
  });
}

/** Columns `at` … `at + count - 1` taken out. Throws `motif-too-large` if none would be left. */
export function deleteColumns(grid: Grid, at: number, count: number): Grid {
  assertBetween(at, 0, grid.width - count);
  return build(grid.width - count, grid.height, (column, row) =>
    cellAt(grid, column < at ? column : column + count, row),
  );
}

/** `count` rows of `fill` put in below row `at` (0 … height). Throws `motif-too-large`. */
export function insertRows(grid: Grid, at: number, count: number, fill: number): Grid {
  assertBetween(at, 0, grid.height);
  return build(grid.width, grid.height + count, (column, row) => {
    if (row < at) return cellAt(grid, column, row);
    return row < at + count ? fill : cellAt(grid, column, row - count);
  });
}

/** Rows `at` … `at + count - 1` taken out. Throws `motif-too-large` if none would be left. */
export function deleteRows(grid: Grid, at: number, count: number): Grid {
  assertBetween(at, 0, grid.height - count);
  return build(grid.width, grid.height - count, (column, row) => cellAt(grid, column, row < at ? row : row + count));
}

/** Two colours exchanged everywhere; with figure and ground of a two-colour motif: inverted. Its own inverse. */
export function exchangeColours(grid: Grid, a: number, b: number): Grid {
  return { ...grid, cells: grid.cells.map((cell) => (cell === a ? b : cell === b ? a : cell)) };
}

function assertBetween(value: number, least: number, most: number): void {
  if (!Number.isInteger(value) || value < least || value > most) {
    throw new RangeError(`${value} does not lie between ${least} and ${most}`);
  }
}

/** `value` counted round by `by`, from 0 up to `by` and never negative, as columns of a repeat without end are. */
export function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}
