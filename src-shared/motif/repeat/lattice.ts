/**
 * Stepped repeats: half drop, brick, and any other step.
 *
 * The translations that leave a tiled plane unchanged form a lattice. Its basis
 * can be written (a, 0), (s, b): a across, and moving up b rows shifts the
 * pattern by s. a·b·k = width·height of the tile for a whole k.
 *
 * Two rows of a tile are the same pattern turned along the row if and only if
 * their least rotations (Booth 1980) are equal; the difference of the turning
 * points is the shift, up to the row's own period. So each row is reduced to a
 * class, a turning point and a period in linear time, and the search for b and
 * s works on those numbers alone: exact, without looking at cells again.
 */
import { modulo, type Grid } from '../../grid/index.ts';
import { borderTable } from './border.ts';

/** The smallest cell of a tiled plane: `across` wide, and moving up `rows` shifts by `shift`, 0 ≤ shift < across. */
export interface Lattice {
  readonly across: number;
  readonly rows: number;
  readonly shift: number;
}

interface CyclicRow {
  readonly kind: number;
  /** Where the least rotation starts. */
  readonly turn: number;
  /** Smallest rotation that leaves the row unchanged; divides the width. */
  readonly period: number;
}

/** The lattice of the plane that `tile` fills when laid side by side and on top of itself. */
export function latticeOf(tile: Grid): Lattice {
  const { height } = tile;
  // A step moves every row onto one with as many cells of each colour: few b are left after this.
  const contents = rowContents(tile);
  const candidates: number[] = [];
  for (let b = 1; b * 2 <= height; b++) {
    if (height % b === 0 && contents.every((content, r) => content === contents[(r + b) % height])) candidates.push(b);
  }
  const across = smallestAcross(tile);
  if (candidates.length === 0) return { across, rows: height, shift: 0 };
  const rows = cyclicRows(tile);
  for (const b of candidates) {
    if (!rows.every((row, r) => row.kind === rows[(r + b) % height]?.kind)) continue;
    const shift = commonShift(rows, b, across);
    if (shift !== null) return { across, rows: b, shift };
  }
  return { across, rows: height, shift: 0 };
}

/** The smallest move across that leaves every row unchanged; most drawings are settled by their first rows. */
function smallestAcross({ width, height, cells }: Grid): number {
  let across = 1;
  for (let row = 0; row < height && across < width; row++) {
    across = leastCommonMultiple(across, cyclicPeriod(cells.subarray(row * width, (row + 1) * width)));
  }
  return across;
}

/** The one shift that turns every row into the row `b` above it, or null. */
function commonShift(rows: readonly CyclicRow[], b: number, across: number): number | null {
  const height = rows.length;
  // The row with the longest period leaves the fewest shifts to try.
  let strictest = 0;
  rows.forEach((row, r) => {
    if (row.period > (rows[strictest] as CyclicRow).period) strictest = r;
  });
  const fits = (shift: number): boolean =>
    rows.every((row, r) => {
      const above = rows[(r + b) % height] as CyclicRow;
      return (above.turn - row.turn - shift) % row.period === 0;
    });
  const guide = rows[strictest] as CyclicRow;
  const above = rows[(strictest + b) % height] as CyclicRow;
  const start = modulo(above.turn - guide.turn, guide.period);
  for (let shift = start; shift < across; shift += guide.period) {
    if (fits(shift)) return shift;
  }
  return null;
}

/** For each row a number that is the same for rows with the same cells in any order. */
function rowContents(tile: Grid): Int32Array {
  const { width, height, cells } = tile;
  const contents = new Int32Array(height);
  for (let row = 0, cell = 0; row < height; row++) {
    let sum = 0;
    for (let column = 0; column < width; column++, cell++) {
      sum = (sum + Math.imul((cells[cell] as number) + 1, 0x9e3779b1)) | 0;
    }
    contents[row] = sum;
  }
  return contents;
}

function cyclicRows(tile: Grid): CyclicRow[] {
  const { width, height, cells } = tile;
  const kinds = new Map<string, number>();
  return Array.from({ length: height }, (_, r) => {
    const row = cells.subarray(r * width, (r + 1) * width);
    const twice = new Uint8Array(2 * width);
    twice.set(row);
    twice.set(row, width);
    const turn = leastRotation(twice);
    const least = twice.subarray(turn, turn + width);
    const text = String.fromCharCode(...least);
    let kind = kinds.get(text);
    if (kind === undefined) {
      kind = kinds.size;
      kinds.set(text, kind);
    }
    return { kind, turn, period: cyclicPeriod(row) };
  });
}

/**
 * Where the least rotation of a cyclic word starts; the word is given twice
 * over, so that no index has to wrap. Two starts race, and each comparison
 * rules out all the starts it covered: linear time.
 */
function leastRotation(twice: Uint8Array): number {
  const length = twice.length / 2;
  let i = 0;
  let j = 1;
  let k = 0;
  while (i < length && j < length && k < length) {
    const a = twice[i + k] as number;
    const b = twice[j + k] as number;
    if (a === b) {
      k++;
      continue;
    }
    if (a > b) i += k + 1;
    else j += k + 1;
    if (i === j) j++;
    k = 0;
  }
  return Math.min(i, j);
}

/** The smallest period that divides the length, so that the word read as a ring repeats with it. */
export function cyclicPeriod(word: ArrayLike<number>): number {
  const { length } = word;
  const period = length - (borderTable(word)[length - 1] ?? 0);
  return length % period === 0 ? period : length;
}

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return (a / x) * b;
}
