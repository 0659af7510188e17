/**
 * The outline of a piece on the needles, row by row.
 *
 * Inside the program every shape becomes an {@link Outline}: the first and
 * last needle of each row. All that follows (placing, clipping, strands,
 * drawing) reads the outline and knows no shapes.
 */
import type { Run, Side, Slot } from '../bed/index.ts';
import { problemError } from '../problem/index.ts';
import type { EdgeStep } from './steps.ts';

/** More stitches than any bed holds. */
export const MOST_STITCHES = 1000;

export type Shape =
  | { readonly kind: 'rectangle'; readonly stitches: number; readonly rows: number }
  | {
      /** Cast on `stitches`, increased evenly on both edges to `stitchesAtTop`, then `straightRows` without shaping. */
      readonly kind: 'tapered';
      readonly stitches: number;
      readonly stitchesAtTop: number;
      readonly rows: number;
      readonly straightRows: number;
    }
  | {
      /**
       * Cast on `stitches`, shaped evenly to the waist over `rowsToWaist`, from
       * there evenly to the chest over `rowsToChest`, then straight up to `rows`.
       */
      readonly kind: 'body';
      readonly stitches: number;
      readonly stitchesAtWaist: number;
      readonly stitchesAtChest: number;
      readonly rowsToWaist: number;
      readonly rowsToChest: number;
      readonly rows: number;
    }
  | {
      /** Cast on `stitches`, then shaped row by row: sleeve heads, necks, whatever is not even. */
      readonly kind: 'steps';
      readonly stitches: number;
      readonly rows: number;
      /** In the order of their rows, one a row. */
      readonly steps: readonly EdgeStep[];
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
 * The outline of a shape. Even shaping moves both edges by one stitch at a
 * time; where the widths differ by an odd number, the last stitch is changed
 * at the edge that leaves the piece centred. Throws `shaping-impossible`,
 * `shaping-outside-piece`, `shaping-leaves-nothing` or `shaping-too-wide`.
 */
export function outlineOf(shape: Shape, standing: Standing): Outline {
  switch (shape.kind) {
    case 'rectangle':
      return outlineFrom(shape, standing, []);
    case 'tapered': {
      const shapedRows = Math.max(0, shape.rows - shape.straightRows);
      return outlineFrom(
        shape,
        standing,
        evenSteps({ from: shape.stitches, to: shape.stitchesAtTop, after: 0, rows: shapedRows }, standing),
      );
    }
    case 'body': {
      const { stitches, stitchesAtWaist, stitchesAtChest, rowsToWaist, rowsToChest } = shape;
      return outlineFrom(shape, standing, [
        ...evenSteps({ from: stitches, to: stitchesAtWaist, after: 0, rows: rowsToWaist }, standing),
        ...evenSteps({ from: stitchesAtWaist, to: stitchesAtChest, after: rowsToWaist, rows: rowsToChest }, standing),
      ]);
    }
    case 'steps':
      return outlineFrom(shape, standing, shape.steps);
  }
}

/** A part of the piece that goes evenly `from` so many stitches `to` so many, over the `rows` after row `after`. */
interface EvenPart {
  readonly from: number;
  readonly to: number;
  readonly after: number;
  readonly rows: number;
}

function evenSteps({ from, to, after, rows }: EvenPart, standing: Standing): EdgeStep[] {
  const sign = Math.sign(to - from);
  const pairs = Math.floor(Math.abs(to - from) / 2);
  const steps = evenChanges(pairs, rows).map((row) => ({ row: after + row, left: sign, right: sign }));
  if (Math.abs(to - from) % 2 === 1) {
    const [start, end] = [edgesOf(from, standing), edgesOf(to, standing)];
    const row = after + Math.max(1, rows);
    const last = steps.at(-1)?.row === row ? steps.pop() : undefined;
    const odd = { left: start.first - end.first - sign * pairs, right: end.last - start.last - sign * pairs };
    steps.push({ row, left: odd.left + (last?.left ?? 0), right: odd.right + (last?.right ?? 0) });
  }
  return steps;
}

/** The cast-on, and what each step makes of it from its row on. Steps go up the piece. */
function outlineFrom(
  { stitches, rows }: { readonly stitches: number; readonly rows: number },
  standing: Standing,
  steps: readonly EdgeStep[],
): Outline {
  const outline = { rows, first: new Int32Array(rows), last: new Int32Array(rows) };
  let { first, last } = edgesOf(stitches, standing) as { first: number; last: number };
  let [leftmost, rightmost, done] = [first, last, 0];
  for (const { row, left, right } of steps) {
    if (row > rows) throw problemError('shaping-outside-piece', { row, rows });
    const taken = Math.max(0, -left) + Math.max(0, -right);
    const before = last - first + 1;
    if (taken >= before) throw problemError('shaping-leaves-nothing', { row, taken, before });
    fill(outline, done, row - 1, first, last);
    done = row - 1;
    first -= left;
    last += right;
    leftmost = Math.min(leftmost, first);
    rightmost = Math.max(rightmost, last);
    const needles = rightmost - leftmost + 1;
    if (needles > MOST_STITCHES) throw problemError('shaping-too-wide', { row, needles, most: MOST_STITCHES });
  }
  fill(outline, done, rows, first, last);
  return outline;
}

/** Rows `from` up to and without `to`, counted from 0. */
function fill(outline: Outline, from: number, to: number, first: number, last: number): void {
  outline.first.fill(first, from, to);
  outline.last.fill(last, from, to);
}

/** First and last needle of `row` (1-based). */
export function edgesAt(outline: Outline, row: number): Run {
  return { first: outline.first[row - 1] as Slot, last: outline.last[row - 1] as Slot };
}

/** From the leftmost needle that any row has to the rightmost. */
export function needlesTaken(outline: Outline): Run {
  let [first, last] = [Infinity, -Infinity];
  for (let row = 0; row < outline.rows; row++) {
    first = Math.min(first, outline.first[row] as number);
    last = Math.max(last, outline.last[row] as number);
  }
  return { first: first as Slot, last: last as Slot };
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
