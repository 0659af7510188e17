/**
 * The true repeat of a drawing, across and up.
 *
 * The smallest p such that `cell[r][c] = cell[r][c + p]` wherever both exist,
 * with at least two whole copies drawn (p ≤ width / 2); else the whole width.
 *
 * Columns (and rows) are first reduced to one hash each, in one pass; equal
 * columns have equal hashes, so the true period is among the periods of the
 * hash sequence. Each candidate, smallest first, is then checked cell by cell,
 * so the answer is exact whatever the hash does.
 */
import type { Grid } from '../../grid/index.ts';
import { periodsOf } from './border.ts';

export interface Repeat {
  readonly width: number;
  readonly height: number;
  /** The drawn width is a whole number of repeats; otherwise the last copy is cut. */
  readonly dividesAcross: boolean;
  readonly dividesUp: boolean;
}

export function trueRepeat(grid: Grid): Repeat {
  const { columns, rows } = lineHashes(grid);
  const width = smallestPeriod(columns, (period) => repeatsAfter(grid, period, 0));
  const height = smallestPeriod(rows, (period) => repeatsAfter(grid, 0, period));
  return { width, height, dividesAcross: grid.width % width === 0, dividesUp: grid.height % height === 0 };
}

/** True if every cell equals the one `columns` to its right and `rows` above it, wherever both exist. */
function repeatsAfter(grid: Grid, columns: number, rows: number): boolean {
  const { width, height, cells } = grid;
  const shift = rows * width + columns;
  for (let row = 0; row + rows < height; row++) {
    const end = row * width + width - columns;
    for (let index = row * width; index < end; index++) {
      if (cells[index] !== cells[index + shift]) return false;
    }
  }
  return true;
}

function smallestPeriod(lines: Uint32Array, isPeriod: (period: number) => boolean): number {
  for (const period of periodsOf(lines)) {
    if (period * 2 > lines.length) break;
    if (isPeriod(period)) return period;
  }
  return lines.length;
}

/** One hash for each column and each row (FNV-1a's step, 32 bits), in one pass over the cells. */
function lineHashes(grid: Grid): { columns: Uint32Array; rows: Uint32Array } {
  const { width, height, cells } = grid;
  const columns = new Uint32Array(width).fill(0x811c9dc5);
  const rows = new Uint32Array(height);
  for (let row = 0; row < height; row++) {
    let hash = 0x811c9dc5;
    const start = row * width;
    for (let column = 0; column < width; column++) {
      const cell = cells[start + column] as number;
      hash = Math.imul(hash ^ cell, 0x01000193);
      columns[column] = Math.imul((columns[column] as number) ^ cell, 0x01000193);
    }
    rows[row] = hash >>> 0;
  }
  return { columns, rows };
}
