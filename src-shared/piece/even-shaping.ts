/**
 * Even shaping: on which rows a part that widens or narrows evenly is changed,
 * and by what at each edge.
 *
 * Rules of the trade (common practice, no source): a change is made before its
 * row, so never before row 1, whose stitches were just cast on; none inside a
 * folded hem, whose loops are hung one to a needle, nor on the row that joins
 * it; none on the last row; one stitch at an edge on a row.
 */
import { problemError } from '../problem/index.ts';
import type { EdgeStep } from './shape-model.ts';
import { edgesOf, type Footing } from './standing.ts';

/** Rows that stay as wide as the one below them at the end of even shaping. */
export const LEAST_STRAIGHT_ROWS = 1;

/**
 * The rows (1-based, counted from the first shaped row) on which a change is
 * made when `changes` are spread evenly over `rows`: intervals differ by at
 * most one, the shorter ones first. With q = ⌊rows / changes⌋ and
 * e = rows − q·changes: every q-th row (changes − e) times, then every
 * (q + 1)-th row e times. Throws `shaping-impossible` if there are more
 * changes than rows.
 */
export function evenChanges(changes: number, rows: number): number[] {
  if (changes === 0) return [];
  if (changes > rows) throw problemError('shaping-impossible', { changes, rows });
  const interval = Math.floor(rows / changes);
  const longer = rows - interval * changes;
  const result: number[] = [];
  let row = 0;
  for (let i = 0; i < changes; i++) {
    row += i < changes - longer ? interval : interval + 1;
    result.push(row);
  }
  return result;
}

/** The rows of a piece that even shaping may change; `last` is below `first` where there are none. */
export function shapeableRows(rows: number, hemRows: number): { readonly first: number; readonly last: number } {
  // Row 1 is the cast-on; the row above a hem joins it. A single row does not fold.
  const first = hemRows > 1 ? hemRows + 2 : 2;
  return { first, last: rows - LEAST_STRAIGHT_ROWS };
}

/** A part of the piece that goes evenly `from` so many stitches `to` so many, on the rows above row `after` up to `until`. */
export interface EvenPart {
  readonly from: number;
  readonly to: number;
  readonly after: number;
  readonly until: number;
}

/**
 * The steps of an even part of a piece of `rows` rows, one stitch at each edge
 * a step. Where the widths differ by an odd number, the last stitch is changed
 * at the one edge that leaves the piece centred, on a row of its own: in the
 * middle of the longest stretch without a change, the uppermost of these.
 * Throws `shaping-impossible` if the rows do not suffice.
 */
export function evenSteps(part: EvenPart, rows: number, footing: Footing): EdgeStep[] {
  const { from, to } = part;
  const sign = Math.sign(to - from);
  const pairs = Math.floor(Math.abs(to - from) / 2);
  const isOdd = Math.abs(to - from) % 2 === 1;
  const shapeable = shapeableRows(rows, footing.hemRows);
  // Intervals are counted from the top of the hem; the first change may have to wait a row longer.
  const after = Math.max(part.after, footing.hemRows > 1 ? footing.hemRows : 0);
  const first = Math.max(after + 1, shapeable.first);
  const until = Math.min(part.until, shapeable.last);
  const changes = pairs + Number(isOdd);
  const room = Math.max(0, until - first + 1);
  if (changes > room) throw problemError('shaping-impossible', { changes, rows: room });

  const onRows = pairRows(pairs, after, first, until);
  const steps = onRows.map((row): EdgeStep => ({ row, left: sign, right: sign }));
  if (!isOdd) return steps;
  const [start, end] = [edgesOf(from, footing), edgesOf(to, footing)];
  const left = start.first - end.first - sign * pairs;
  const right = end.last - start.last - sign * pairs;
  return [...steps, { row: rowBetween(onRows, first, until), left, right }].sort((a, b) => a.row - b.row);
}

function pairRows(pairs: number, after: number, first: number, until: number): number[] {
  if (pairs === 0) return [];
  const spread = evenChanges(pairs, until - after).map((row) => after + row);
  if ((spread[0] as number) >= first) return spread;
  return evenChanges(pairs, until - first + 1).map((row) => first - 1 + row);
}

/** The middle of the longest run of rows `first` … `until` without a change; of those as long, the uppermost. */
function rowBetween(taken: readonly number[], first: number, until: number): number {
  let [longest, middle, low] = [0, first, first];
  for (const row of [...taken, until + 1]) {
    const free = row - low;
    if (free > 0 && free >= longest) [longest, middle] = [free, low + Math.floor(free / 2)];
    low = row + 1;
  }
  return middle;
}
