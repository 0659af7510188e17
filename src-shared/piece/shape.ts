/**
 * The outline of a piece on the needles, row by row.
 *
 * Inside the program every shape becomes an {@link Outline}: the first and
 * last needle of each row. All that follows (placing, clipping, strands,
 * drawing) reads the outline and knows no shapes.
 */
import type { Run, Side, Slot } from '../bed/index.ts';
import { problemError } from '../problem/index.ts';

export type Shape =
  | { readonly kind: 'rectangle'; readonly stitches: number; readonly rows: number }
  | {
      /** Cast on `stitches`, increased evenly on both edges to `stitchesAtTop`, then `straightRows` without shaping. */
      readonly kind: 'tapered';
      readonly stitches: number;
      readonly stitchesAtTop: number;
      readonly rows: number;
      readonly straightRows: number;
    };

/** First and last needle of every row; index 0 is row 1. */
export interface Outline {
  readonly rows: number;
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** Where a piece stands on the bed. */
export interface Standing {
  /** On which side of the centre the extra stitch of an odd piece stands. */
  readonly oddStitch: Side;
  /** Needles to the right of the centred position (negative: to the left). */
  readonly offset: number;
}

/** The needles of a row of `stitches`: L60 … R60 for 120 without an offset. */
export function edgesOf(stitches: number, standing: Standing): Run {
  const leftOfCentre = standing.oddStitch === 'left' ? Math.ceil(stitches / 2) : Math.floor(stitches / 2);
  const first = standing.offset - leftOfCentre;
  return { first: first as Slot, last: (first + stitches - 1) as Slot };
}

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

/**
 * The outline of a shape. A tapered piece widens by one stitch on each edge at
 * a time; where the widths differ by an odd number, the last stitch is added on
 * the side of the odd stitch. Throws `shaping-impossible`.
 */
export function outlineOf(shape: Shape, standing: Standing): Outline {
  const { rows } = shape;
  const first = new Int32Array(rows);
  const last = new Int32Array(rows);
  const start = edgesOf(shape.stitches, standing);
  if (shape.kind === 'rectangle') {
    return { rows, first: first.fill(start.first), last: last.fill(start.last) };
  }
  const difference = shape.stitchesAtTop - shape.stitches;
  const step = Math.sign(difference);
  const pairs = Math.floor(Math.abs(difference) / 2);
  const isOdd = Math.abs(difference) % 2 === 1;
  const shapedRows = Math.max(0, rows - shape.straightRows);
  const changes = new Set(evenChanges(pairs, shapedRows));
  let { first: left, last: right } = start as { first: number; last: number };
  for (let row = 1; row <= rows; row++) {
    if (changes.has(row)) {
      left -= step;
      right += step;
    }
    if (isOdd && row === Math.max(1, shapedRows)) {
      if (standing.oddStitch === 'left') left -= step;
      else right += step;
    }
    first[row - 1] = left;
    last[row - 1] = right;
  }
  return { rows, first, last };
}

/** First and last needle of `row` (1-based). */
export function edgesAt(outline: Outline, row: number): Run {
  return { first: outline.first[row - 1] as Slot, last: outline.last[row - 1] as Slot };
}

/** Stitches in `row` (1-based). */
export function stitchesAt(outline: Outline, row: number): number {
  return (outline.last[row - 1] as number) - (outline.first[row - 1] as number) + 1;
}

/** All stitches of the piece. */
export function stitchCount(outline: Outline): number {
  let count = 0;
  for (let row = 1; row <= outline.rows; row++) count += stitchesAt(outline, row);
  return count;
}
