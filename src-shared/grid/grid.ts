/**
 * A drawing in cells.
 *
 * Row 0 is the first knitted row (the bottom of the chart) and column 0 the
 * left edge as drawn. Cells are palette indices, row-major. A grid is never
 * changed in place once it is part of a project.
 */
import { problemError } from '../problem/index.ts';

export interface Grid {
  readonly width: number;
  readonly height: number;
  readonly cells: Uint8Array;
}

/** The largest motif: wider than any bed, taller than any garment. */
export const MOST_COLUMNS = 1000;
export const MOST_ROWS = 4000;

/** Palette indices a grid may hold, 0 … MOST_COLOURS - 1. */
export const MOST_COLOURS = 64;

/** A grid of `width` × `height` cells, all `fill`. Throws `motif-too-large` past the limits or below 1. */
export function makeGrid(width: number, height: number, fill = 0): Grid {
  assertSize(width, height);
  return { width, height, cells: new Uint8Array(width * height).fill(fill) };
}

/**
 * A grid from text, one character a cell, the topmost row first as a chart is
 * read by eye. `palette` gives the index of each character.
 */
export function gridFromText(lines: readonly string[], palette: string): Grid {
  const height = lines.length;
  const width = lines[0]?.length ?? 0;
  assertSize(width, height);
  const cells = new Uint8Array(width * height);
  lines.forEach((line, fromTop) => {
    if (line.length !== width) throw new RangeError(`Line ${fromTop + 1} has ${line.length} cells, not ${width}`);
    const row = height - 1 - fromTop;
    for (let column = 0; column < width; column++) {
      const index = palette.indexOf(line.charAt(column));
      if (index < 0)
        throw new RangeError(`Line ${fromTop + 1} holds "${line.charAt(column)}", not one of "${palette}"`);
      cells[row * width + column] = index;
    }
  });
  return { width, height, cells };
}

/** Inverse of {@link gridFromText}: lines of text, the topmost row first. */
export function gridToText(grid: Grid, palette: string): string[] {
  const lines: string[] = [];
  // Kept work is written while one draws: a row at once, for letter by letter the largest drawing takes a second.
  const codes = new Uint16Array(grid.width);
  for (let row = grid.height - 1; row >= 0; row--) {
    for (let column = 0; column < grid.width; column++) codes[column] = palette.charCodeAt(cellAt(grid, column, row));
    lines.push(String.fromCharCode(...codes));
  }
  return lines;
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
