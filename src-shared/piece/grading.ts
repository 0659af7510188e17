/**
 * A size proposed from two others: grading.
 *
 * Every number goes on in a straight line through the two sizes: between them
 * it is the middle, beyond them their difference is taken once more (common
 * practice, no source). Halves go up, as they do where a count comes nearest
 * to a length. What both have as a length is worked out as a length, which is
 * then given, and its count follows.
 *
 * Rows are worked out where a part ends, counted from the cast-on, and not
 * part by part: rounded each for itself, hem and sections could come out
 * longer than the piece.
 */
import { MOST_STITCHES } from '../bed/index.ts';
import { LEAST_STRAIGHT_ROWS } from './even-shaping.ts';
import { fitted, heldLengths, withLengthsGiven, type LengthsOf, type Measured } from './given-lengths.ts';
import {
  FIRST_SHAPED_ROW,
  MOST_EDGE_CHANGE,
  MOST_LENGTH_MM,
  MOST_PIECE_ROWS,
  type EdgeStep,
  type Shape,
} from './shape-model.ts';

/** Where a size stands to the two that it is proposed from. */
export type Grade = 'below' | 'between' | 'above';

/** How far along the way from the smaller to the larger. */
const WAY: { readonly [At in Grade]: number } = { below: -1, between: 0.5, above: 2 };

/**
 * The piece in a size that comes `at` the two in which it is given. All that
 * sizes share is as in `smaller`. Two sizes that are alike give a copy.
 *
 * Sizes of one kind of shape have a shape of that kind; shaping row by row is
 * worked out step by step where both have as many. Otherwise the shape is that
 * of the nearer size, between the two that of the smaller. Numbers stay within
 * what a piece can have, and beyond the two a piece is at least as long as
 * what it consists of.
 */
export function graded<P extends Measured>(smaller: P, larger: P, at: Grade): P {
  if (smaller === larger) return smaller;
  const nearer = at === 'above' ? larger : smaller;
  const [hemRows = 0, ...sections] = heights(
    [smaller.hemRows, ...smaller.sections.map(({ rows }) => rows)],
    [larger.hemRows, ...larger.sections.map(({ rows }) => rows)],
    at,
  );
  const parts = smaller.sections.map(({ lengthMm: _, ...section }, index) => ({
    ...section,
    rows: Math.max(1, sections[index] ?? 1),
  }));
  const least = parts.reduce((sum, { rows }) => sum + rows, hemRows);
  const line = gradedShape(smaller.shape, larger.shape, at);
  const shape = line && at !== 'between' ? atLeastAsLong(line, least) : (line ?? nearer.shape);
  const { lengths: _, ...shared } = smaller;
  const counted: Measured = { ...shared, shape, hemRows, sections: parts };
  const lengths = new Map([
    ...gradedLengths(line ? [smaller, larger] : [nearer, nearer], 'shape', at),
    ...gradedLengths([smaller, larger], 'sections', at),
  ]);
  return fitted(counted, withLengthsGiven(counted, lengths)) as P;
}

/** A count of a proposed size, with those of the two that it is proposed from. */
export interface GradedCount {
  readonly what: 'stitches' | 'rows';
  readonly smaller: number;
  readonly larger: number;
  readonly lies: Grade;
  readonly proposed: number;
}

/** What the stitches and rows of a proposed size come from. */
export function gradedCounts(smaller: Shape, larger: Shape, lies: Grade, proposed: Shape): GradedCount[] {
  return (['stitches', 'rows'] as const).map((what) => {
    return { what, smaller: smaller[what], larger: larger[what], lies, proposed: proposed[what] };
  });
}

/** A number `at` two others, whole, within its bounds. */
function onLine(one: number, other: number, at: Grade, least: number, most: number): number {
  return within(Math.round(through(one, other, at)), least, most);
}

function through(one: number, other: number, at: Grade): number {
  return one + WAY[at] * (other - one);
}

function within(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

const stitches = (one: number, other: number, at: Grade): number => onLine(one, other, at, 1, MOST_STITCHES);
const rows = (one: number, other: number, at: Grade): number => onLine(one, other, at, 1, MOST_PIECE_ROWS);

/** Heights of parts that stand on each other, by where each of them ends. */
function heights(one: readonly number[], other: readonly number[], at: Grade): number[] {
  let [ofOne, ofOther, below] = [0, 0, 0];
  return one.map((height, index) => {
    ofOne += height;
    ofOther += other[index] ?? height;
    const end = Math.round(through(ofOne, ofOther, at));
    const own = within(end - below, 0, MOST_PIECE_ROWS);
    below = end;
    return own;
  });
}

/** Fewer than the least are knitted as the least. */
function straightRowsOf({ straightRows }: Extract<Shape, { readonly kind: 'tapered' }>): number {
  return Math.max(LEAST_STRAIGHT_ROWS, straightRows);
}

/** True where a size `at` these two is shaped by both, and not as the nearer is. */
export function isShapedByBoth(one: Shape, other: Shape, at: Grade): boolean {
  return gradedShape(one, other, at) !== null;
}

/** The shape `at` two of one kind; null where they are of two, or shaped in unlike steps. */
function gradedShape(one: Shape, other: Shape, at: Grade): Shape | null {
  const both = { stitches: stitches(one.stitches, other.stitches, at), rows: rows(one.rows, other.rows, at) };
  switch (one.kind) {
    case 'rectangle':
      return one.kind === other.kind ? { kind: one.kind, ...both } : null;
    case 'tapered': {
      if (one.kind !== other.kind) return null;
      const [own, there] = [straightRowsOf(one), straightRowsOf(other)];
      const [, straightRows = own] = heights([one.rows - own, own], [other.rows - there, there], at);
      const stitchesAtTop = stitches(one.stitchesAtTop, other.stitchesAtTop, at);
      return { kind: one.kind, ...both, stitchesAtTop, straightRows: Math.max(LEAST_STRAIGHT_ROWS, straightRows) };
    }
    case 'body': {
      if (one.kind !== other.kind) return null;
      const [rowsToWaist = 0, rowsToChest = 0] = heights(
        [one.rowsToWaist, one.rowsToChest],
        [other.rowsToWaist, other.rowsToChest],
        at,
      );
      return {
        kind: one.kind,
        ...both,
        stitchesAtWaist: stitches(one.stitchesAtWaist, other.stitchesAtWaist, at),
        stitchesAtChest: stitches(one.stitchesAtChest, other.stitchesAtChest, at),
        rowsToWaist,
        rowsToChest,
      };
    }
    case 'steps': {
      const steps = one.kind === other.kind ? gradedSteps(one.steps, other.steps, at) : null;
      if (!steps || (at !== 'between' && steps.some(({ row }) => row > both.rows))) return null;
      return { kind: one.kind, ...both, steps };
    }
  }
}

/** Step by step; null where one has more of them, or they would not go up the piece one above the other. */
function gradedSteps(one: readonly EdgeStep[], other: readonly EdgeStep[], at: Grade): EdgeStep[] | null {
  if (one.length !== other.length) return null;
  const steps = one.map(({ row, left, right }, index): EdgeStep => {
    const there = other[index] as EdgeStep;
    const change = (from: number, to: number): number =>
      // Adding 0 makes a step of no stitches plain 0, never -0.
      onLine(from, to, at, -MOST_EDGE_CHANGE, MOST_EDGE_CHANGE) + 0;
    return {
      row: Math.round(through(row, there.row, at)),
      left: change(left, there.left),
      right: change(right, there.right),
    };
  });
  const goesUp = steps.every(({ row }, index) => row >= FIRST_SHAPED_ROW && row > (steps[index - 1]?.row ?? 0));
  return goesUp ? steps : null;
}

/** The shape with rows enough for hem and sections, and for what its own rows are counted of. */
function atLeastAsLong(shape: Shape, least: number): Shape {
  const own =
    shape.kind === 'body' ? shape.rowsToWaist + shape.rowsToChest : shape.kind === 'tapered' ? shape.straightRows : 0;
  return { ...shape, rows: within(shape.rows, Math.min(MOST_PIECE_ROWS, Math.max(least, own)), MOST_PIECE_ROWS) };
}

/** Lengths that both sizes were given, on the line through them; one that would be less than nothing is none. */
function gradedLengths([one, other]: readonly [Measured, Measured], of: LengthsOf, at: Grade): [string, number][] {
  const there = heldLengths(other, of);
  return [...heldLengths(one, of)].flatMap(([key, mm]): [string, number][] => {
    const to = there.get(key);
    if (to === undefined) return [];
    // A hundredth of a micrometre is the units' own rounding.
    const given = Number(through(mm, to, at).toFixed(5));
    return given >= 0 && given <= MOST_LENGTH_MM ? [[key, given]] : [];
  });
}
