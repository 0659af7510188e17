/**
 * The outline of a piece on the needles, row by row.
 *
 * Inside the program every shape becomes an {@link Outline}: the first and
 * last needle of each row. All that follows (placing, clipping, strands,
 * drawing) reads the outline and knows no shapes.
 */
import { MOST_STITCHES, type Run, type Slot } from '../bed/index.ts';
import { problemError } from '../problem/index.ts';
import { evenSteps } from './even-shaping.ts';
import type { EdgeStep, Shape } from './shape-model.ts';
import { edgesOf, type Footing } from './standing.ts';

/** First and last needle of every row; index 0 is row 1. */
export interface Outline {
  readonly rows: number;
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/**
 * The outline of a shape. What is to be cast on is cast on: even shaping begins
 * above the cast-on row, and above a folded hem and the row that joins it, and
 * leaves the last row as wide as the one before it (see {@link evenSteps}).
 * Shaping row by row is taken as it is written. Throws `shaping-impossible`,
 * `shaping-outside-piece`, `shaping-leaves-nothing` or `shaping-too-wide`.
 */
export function outlineOf(shape: Shape, footing: Footing): Outline {
  return outlineFrom(shape, footing, stepsOfShape(shape, footing));
}

function stepsOfShape(shape: Shape, footing: Footing): readonly EdgeStep[] {
  switch (shape.kind) {
    case 'rectangle':
      return [];
    case 'steps':
      return shape.steps;
    case 'tapered': {
      const { stitches, stitchesAtTop, rows, straightRows } = shape;
      const part = { from: stitches, to: stitchesAtTop, after: 0, until: rows - straightRows };
      return evenSteps(part, rows, footing);
    }
    case 'body': {
      const { stitches, stitchesAtWaist, stitchesAtChest, rowsToWaist, rowsToChest, rows } = shape;
      const chestAt = rowsToWaist + rowsToChest;
      if (chestAt > rows) throw problemError('shaping-outside-piece', { row: chestAt, rows });
      return [
        ...evenSteps({ from: stitches, to: stitchesAtWaist, after: 0, until: rowsToWaist }, rows, footing),
        ...evenSteps({ from: stitchesAtWaist, to: stitchesAtChest, after: rowsToWaist, until: chestAt }, rows, footing),
      ];
    }
  }
}

/** The cast-on, and what each step makes of it from its row on. Steps go up the piece. */
function outlineFrom(
  { stitches, rows }: { readonly stitches: number; readonly rows: number },
  footing: Footing,
  steps: readonly EdgeStep[],
): Outline {
  const outline = { rows, first: new Int32Array(rows), last: new Int32Array(rows) };
  let { first, last } = edgesOf(stitches, footing) as { first: number; last: number };
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

/** True if every row has the same needles. */
export function isStraight({ first, last }: Outline): boolean {
  return first.every((slot) => slot === first[0]) && last.every((slot) => slot === last[0]);
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
