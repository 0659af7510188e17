/**
 * Rows of the fabric that are alike, needle by needle: what is worked out for
 * one holds for all of them. Most of a large piece is such rows: one copy's
 * lie above another's.
 */
import type { Fabric } from './types.ts';

/**
 * For each row (index 0 is row 1) the index of the lowest one that is alike:
 * its own where none below it is. Now and then a row is said to stand alone
 * that does not, never the other way round.
 */
export function alikeRows(fabric: Fabric): Int32Array {
  return alikeAmong(
    fabric,
    Int32Array.from({ length: fabric.rows }, (_, row) => row),
  );
}

/** The same of a few rows, given by their index and ascending: for each the lowest of them that is alike. */
export function alikeAmong({ cells, width }: Fabric, rows: ArrayLike<number>): Int32Array {
  const line = linesOf(cells, width);
  const alike = new Int32Array(rows.length);
  const lowest = new Map<number, number>();
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at] as number;
    const hash = hashOf(line, row);
    const below = lowest.get(hash);
    if (below === undefined) lowest.set(hash, row);
    alike[at] = below !== undefined && isSame(line, below, row) ? below : row;
  }
  return alike;
}

/** The cells in as few numbers as may be: four in one where rows are made of whole fours. */
interface Lines {
  readonly values: Uint8Array | Int32Array;
  /** Numbers in a row. */
  readonly length: number;
}

function linesOf(cells: Uint8Array, width: number): Lines {
  return width % 4 === 0 && cells.byteOffset % 4 === 0
    ? { values: new Int32Array(cells.buffer, cells.byteOffset, cells.length / 4), length: width / 4 }
    : { values: cells, length: width };
}

/** FNV-1a's step (32 bits), over whole numbers, with the high bits brought down where they count next. */
function hashOf({ values, length }: Lines, row: number): number {
  let hash = 0x811c9dc5;
  for (let at = row * length, end = at + length; at < end; at++) {
    hash = Math.imul(hash ^ (values[at] as number), 0x01000193);
    hash ^= hash >>> 15;
  }
  return hash;
}

function isSame({ values, length }: Lines, one: number, other: number): boolean {
  const off = (other - one) * length;
  for (let at = one * length, end = at + length; at < end; at++) if (values[at] !== values[at + off]) return false;
  return true;
}
