/** Grids made, read and looked at. */
import { problemError } from '../problem/index.ts';
import { readLines } from './lines.ts';
import { MOST_COLUMNS, MOST_ROWS, type Grid } from './model.ts';

/** A grid of `width` × `height` cells, all `fill`. Throws `motif-too-large` past the limits or below 1. */
export function makeGrid(width: number, height: number, fill = 0): Grid {
  assertSize(width, height);
  return { width, height, cells: new Uint8Array(width * height).fill(fill) };
}

/**
 * A grid from text, one character a cell, the topmost row first as a chart is
 * read by eye. `palette` gives the index of each character. Throws
 * `motif-too-large`, or `RangeError` for lines that are no drawing.
 */
export function gridFromText(lines: readonly string[], palette: string): Grid {
  assertSize(lines[0]?.length ?? 0, lines.length);
  const read = readLines(lines, palette);
  if (!('kind' in read)) return read;
  if (read.kind === 'uneven') {
    throw new RangeError(`Line ${read.line + 1} has ${read.cells} cells, not ${read.first}`);
  }
  throw new RangeError(`Line ${read.line + 1} holds "${read.letter}", not one of "${palette}"`);
}

/** The palette index at a cell that exists. */
export function cellAt(grid: Grid, column: number, row: number): number {
  return grid.cells[row * grid.width + column] as number;
}

export function isInside(grid: Pick<Grid, 'width' | 'height'>, column: number, row: number): boolean {
  return column >= 0 && row >= 0 && column < grid.width && row < grid.height;
}

export function sameGrid(a: Grid, b: Grid): boolean {
  return a.width === b.width && a.height === b.height && a.cells.every((cell, index) => cell === b.cells[index]);
}

/** The part of a grid from (`column`, `row`), `width` × `height`; it must lie inside. */
export function crop(grid: Grid, column: number, row: number, width: number, height: number): Grid {
  const cells = new Uint8Array(width * height);
  for (let r = 0; r < height; r++) {
    const from = (row + r) * grid.width + column;
    cells.set(grid.cells.subarray(from, from + width), r * width);
  }
  return { width, height, cells };
}

/**
 * The drawing on a grid of another size. `left` and `bottom` say how many
 * columns and rows are added there (negative: taken away); new cells are `fill`.
 */
export function resize(grid: Grid, width: number, height: number, fill: number, left = 0, bottom = 0): Grid {
  const result = makeGrid(width, height, fill);
  for (let row = 0; row < height; row++) {
    const sourceRow = row - bottom;
    if (sourceRow < 0 || sourceRow >= grid.height) continue;
    for (let column = Math.max(0, left); column < Math.min(width, grid.width + left); column++) {
      result.cells[row * width + column] = cellAt(grid, column - left, sourceRow);
    }
  }
  return result;
}

function assertSize(width: number, height: number): void {
  const fits =
    Number.isInteger(width) &&
    Number.isInteger(height) &&
    width >= 1 &&
    height >= 1 &&
    width <= MOST_COLUMNS &&
    height <= MOST_ROWS;
  if (!fits) {
    throw problemError('motif-too-large', { width, height, mostWidth: MOST_COLUMNS, mostHeight: MOST_ROWS });
  }
}
