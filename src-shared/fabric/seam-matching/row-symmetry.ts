/** How one row of a copy looks when it is moved or turned. */
import type { Grid } from '../../grid/index.ts';
import { borderTable } from '../../motif/repeat/index.ts';

export interface RowSymmetry {
  /** The fewest stitches by which the row, repeated without end, can be moved and look the same. It divides the copy. */
  readonly period: number;
  /**
   * Column c looks like column `mirrorSum` - c for all c, counted round by the
   * period; null if the row has no mirror image in itself. There is one such
   * sum at most: two would move the row by less than its period.
   */
  readonly mirrorSum: number | null;
}

const known = new WeakMap<Grid, readonly RowSymmetry[]>();

/** The symmetry of every row of a copy, worked out once. Linear in its cells. */
export function symmetriesOf(copy: Grid): readonly RowSymmetry[] {
  let rows = known.get(copy);
  if (!rows) {
    const { width, height, cells } = copy;
    rows = Array.from({ length: height }, (_, row) => symmetryOf(cells.subarray(row * width, (row + 1) * width)));
    known.set(copy, rows);
  }
  return rows;
}

function symmetryOf(line: Uint8Array): RowSymmetry {
  const width = line.length;
  const shortest = width - (borderTable(line)[width - 1] as number);
  const period = width % shortest === 0 ? shortest : width;
  return { period, mirrorSum: mirrorSumOf(line.subarray(0, period)) };
}

/** No cell has this value. */
const BETWEEN = -1;

/** Where the row read backwards (column 0 first) is found in two rows on end (Knuth, Morris, Pratt 1977). */
function mirrorSumOf(line: Uint8Array): number | null {
  const period = line.length;
  const backwards = [line[0] as number, ...line.slice(1).reverse()];
  const borders = borderTable([...backwards, BETWEEN, ...line, ...line]);
  const end = borders.indexOf(period, period + 1);
  return end < 0 ? null : (end - 2 * period) % period;
}
