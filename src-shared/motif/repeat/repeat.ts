/**
 * The true repeat of a drawing, across and up.
 *
 * The smallest p such that `cell[r][c] = cell[r][c + p]` wherever both exist,
 * with at least two whole copies drawn (p ≤ width / 2); else the whole width.
 *
 * Columns (and rows) are first reduced to one hash each, in one pass; equal
 * columns have equal hashes, so the true period is among the periods of the
 * hash sequence. Each candidate, smallest first, is then checked cell by cell,
 * so the answer is exact whatever the hash does. Hashes are sums over the cells,
 * so that after a cell is painted only its row is read again.
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

/** One hash for each column and each row. */
export interface LineHashes {
  readonly columns: Int32Array;
  readonly rows: Int32Array;
}

/** `hashes`: of the drawing, where they are known. */
export function trueRepeat(grid: Grid, { columns, rows }: LineHashes = lineHashes(grid)): Repeat {
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

function smallestPeriod(lines: Int32Array, isPeriod: (period: number) => boolean): number {
  for (const period of periodsOf(lines)) {
    if (period * 2 > lines.length) break;
    if (isPeriod(period)) return period;
  }
  return lines.length;
}

export function lineHashes(grid: Grid): LineHashes {
  const hashes = { columns: new Int32Array(grid.width), rows: new Int32Array(grid.height) };
  const add = rowAdder(hashes);
  for (let row = 0; row < grid.height; row++) add(grid, row, 1);
  return hashes;
}

/** What `lineHashes` gives, from what it gave before the rows of `painted` (from 0) were painted. */
export function lineHashesAgain(
  grid: Grid,
  before: { readonly grid: Grid; readonly hashes: LineHashes },
  painted: readonly number[],
): LineHashes {
  const hashes = { columns: before.hashes.columns.slice(), rows: before.hashes.rows.slice() };
  const add = rowAdder(hashes);
  for (const row of painted) {
    add(before.grid, row, -1);
    add(grid, row, 1);
  }
  return hashes;
}

/**
 * Adds the cells of a row to its hash and to those of the columns; -1 takes them
 * away. Each is a sum of the cells, times a number that belongs to their place
 * (multilinear hashing, 32 bits).
 */
function rowAdder({ columns, rows }: LineHashes): (grid: Grid, row: number, sign: 1 | -1) => void {
  const factors = Int32Array.from(columns, (_, column) => factorAt(column));
  return ({ width, cells }, row, sign) => {
    const start = row * width;
    const factor = Math.imul(factorAt(row), sign);
    let hash = 0;
    for (let column = 0; column < width; column++) {
      const cell = cells[start + column] as number;
      hash = (hash + Math.imul(cell, factors[column] as number)) | 0;
      columns[column] = (columns[column] as number) + Math.imul(cell, factor);
    }
    rows[row] = (rows[row] as number) + Math.imul(hash, sign);
  };
}

/** A number that looks random and is odd, for a place (the finalizer of MurmurHash3). */
function factorAt(place: number): number {
  let factor = Math.imul(place + 1, 0x9e3779b1);
  factor = Math.imul(factor ^ (factor >>> 16), 0x85ebca6b);
  factor = Math.imul(factor ^ (factor >>> 13), 0xc2b2ae35);
  return factor | 1;
}
