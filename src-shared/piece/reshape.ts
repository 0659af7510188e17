/** A piece given another kind of shape, keeping as much of what it was as the kind can hold. */
import { MOST_STITCHES } from '../bed/index.ts';
import { outcome } from '../problem/index.ts';
import { countsOf, type ShapeCount } from './counts.ts';
import { LEAST_STRAIGHT_ROWS, shapeableRows } from './even-shaping.ts';
import type { EdgeStep, Shape } from './shape-model.ts';
import { edgesAt, outlineOf, stitchesAt, type Outline } from './shape.ts';
import type { Footing } from './standing.ts';

/** How much wider than its cast-on a tapered piece starts out, and by how much a waist is drawn in at each edge. */
const FIRST_TAPER = 20;
const FIRST_WAIST = 8;

/**
 * The shape as one of `kind`, on the same cast-on and rows. Row by row it keeps
 * the outline; the others start out with shaping that their rows allow.
 */
export function reshaped(shape: Shape, kind: Shape['kind'], footing: Footing): Shape {
  if (kind === shape.kind) return shape;
  const { stitches, rows } = shape;
  const { first, last } = shapeableRows(rows, footing.hemRows);
  /** How often both edges can change above row `after`, up to `until`. */
  const room = (after: number, until: number): number =>
    Math.max(0, Math.min(until, last) - Math.max(after + 1, first) + 1);
  switch (kind) {
    case 'rectangle':
      return { kind, stitches, rows };
    case 'tapered': {
      const most = Math.min(MOST_STITCHES, stitches + Math.min(FIRST_TAPER, 2 * room(0, rows)));
      return { kind, stitches, stitchesAtTop: most, rows, straightRows: LEAST_STRAIGHT_ROWS };
    }
    case 'body': {
      const third = Math.floor(rows / 3);
      const drawnIn = Math.min(FIRST_WAIST, room(0, third), room(third, 2 * third), Math.floor((stitches - 1) / 2));
      const stitchesAtWaist = stitches - 2 * drawnIn;
      return {
        kind,
        stitches,
        stitchesAtWaist,
        stitchesAtChest: stitches,
        rowsToWaist: third,
        rowsToChest: third,
        rows,
      };
    }
    case 'steps': {
      const outline = outcome(() => outlineOf(shape, footing));
      if (!outline.ok) return { kind, stitches, rows, steps: [] };
      return { kind, stitches: stitchesAt(outline.value, 1), rows, steps: edgeStepsOf(outline.value) };
    }
  }
}

/** The rows of an outline on which an edge moves, and how far. */
export function edgeStepsOf(outline: Outline): EdgeStep[] {
  const steps: EdgeStep[] = [];
  for (let row = 2; row <= outline.rows; row++) {
    const [before, now] = [edgesAt(outline, row - 1), edgesAt(outline, row)];
    const [left, right] = [before.first - now.first, now.last - before.last];
    if (left !== 0 || right !== 0) steps.push({ row, left, right });
  }
  return steps;
}

/** The shape with every row `by` stitches wider (negative: narrower), or null if a count would leave what a shape can have. */
export function widened(shape: Shape, by: number): Shape | null {
  const wider = (counts: readonly number[]): boolean =>
    counts.every((count) => count + by >= 1 && count + by <= MOST_STITCHES);
  const stitches = shape.stitches + by;
  switch (shape.kind) {
    case 'rectangle':
    case 'steps':
      return wider([shape.stitches]) ? { ...shape, stitches } : null;
    case 'tapered': {
      const { stitchesAtTop } = shape;
      return wider([shape.stitches, stitchesAtTop]) ? { ...shape, stitches, stitchesAtTop: stitchesAtTop + by } : null;
    }
    case 'body': {
      const { stitchesAtWaist, stitchesAtChest } = shape;
      return wider([shape.stitches, stitchesAtWaist, stitchesAtChest])
        ? { ...shape, stitches, stitchesAtWaist: stitchesAtWaist + by, stitchesAtChest: stitchesAtChest + by }
        : null;
    }
  }
}

/**
 * The shape with every width `ratio` times as many stitches, to the nearest
 * stitch; null if a count would leave what a shape can have. Where it is shaped
 * row by row, each edge goes to the nearest stitch on each row.
 */
export function scaledAcross(shape: Shape, ratio: number): Shape | null {
  const scaled = (count: number): number => Math.round(count * ratio);
  const widths = countsOf(shape).filter(({ of }) => of === 'stitches');
  if (widths.some(({ value }) => scaled(value) < 1 || scaled(value) > MOST_STITCHES)) return null;
  const made = widths.reduce<Shape>((sofar, { field }) => {
    const count = countsOf(sofar).find((each) => each.field === field) as ShapeCount;
    return count.changed(scaled(count.value));
  }, shape);
  return made.kind === 'steps' ? { ...made, steps: scaledSteps(made.steps, scaled) } : made;
}

/** Rounded from the cast-on up, so that what is lost on one row is made up for on the next. */
function scaledSteps(steps: readonly EdgeStep[], scaled: (count: number) => number): EdgeStep[] {
  const now = { left: 0, right: 0 };
  return steps.flatMap(({ row, left, right }) => {
    const before = { left: scaled(now.left), right: scaled(now.right) };
    now.left += left;
    now.right += right;
    const step = { row, left: scaled(now.left) - before.left, right: scaled(now.right) - before.right };
    return step.left === 0 && step.right === 0 ? [] : [step];
  });
}
