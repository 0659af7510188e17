/** The four corners of a chart in a photo, and whether they can be the corners of one. */
import { problemError } from '../problem/index.ts';

/** A position in pixels from the outer corner of the first pixel, x to the right and y downwards. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Clockwise as seen: the chart's top left, top right, bottom right, bottom left. */
export type Corners = readonly [Point, Point, Point, Point];

/** Why four points cannot be the corners of a chart. */
export type CornerFault = 'too-close' | 'in-line' | 'crossed' | 'not-convex' | 'anticlockwise';

/** Sides shorter than this hold no chart. */
const LEAST_SIDE = 4;

/** Below this sine (about 1°) two sides are one line to a hand that drags corners. */
const LEAST_SINE = 0.0175;

/** The corners of a rectangle `width` × `height` at the origin. */
export function rectangle(width: number, height: number): Corners {
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
}

/**
 * What is wrong with four corners, or null if they can be those of a chart
 * whose sides are at least `leastSide` long.
 *
 * Going round a convex quadrilateral all four turns go the same way; going
 * round one whose sides cross, two go each way; a dent turns one of them back.
 */
export function cornerFault(corners: Corners, leastSide = LEAST_SIDE): CornerFault | null {
  const turns: number[] = [];
  for (let i = 0; i < 4; i++) {
    const before = corners[i] as Point;
    const here = corners[(i + 1) % 4] as Point;
    const after = corners[(i + 2) % 4] as Point;
    const toHere = Math.hypot(here.x - before.x, here.y - before.y);
    const toAfter = Math.hypot(after.x - here.x, after.y - here.y);
    // Also true where a coordinate is not a number.
    if (!(toHere >= leastSide && toAfter >= leastSide)) return 'too-close';
    const cross = (here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x);
    turns.push(cross / (toHere * toAfter));
  }
  if (turns.some((sine) => Math.abs(sine) < LEAST_SINE)) return 'in-line';
  const clockwise = turns.filter((sine) => sine > 0).length;
  if (clockwise === 4) return null;
  if (clockwise === 0) return 'anticlockwise';
  return clockwise === 2 ? 'crossed' : 'not-convex';
}

/**
 * Throws `corners-unusable` for corners that no chart has, and
 * `corner-outside-picture` for one that lies outside `width` × `height`.
 */
export function assertCorners(corners: Corners, width: number, height: number): void {
  const fault = cornerFault(corners);
  if (fault !== null) throw problemError('corners-unusable', { fault });
  corners.forEach(({ x, y }, index) => {
    if (x < 0 || y < 0 || x > width || y > height) {
      throw problemError('corner-outside-picture', { corner: index + 1, x, y, width, height });
    }
  });
}

/** The corners of the same chart, read turned clockwise by so many quarters. */
export function turnedBy(corners: Corners, quarters: number): Corners {
  return [0, 1, 2, 3].map((corner) => corners[(((corner - quarters) % 4) + 4) % 4]) as unknown as Corners;
}

/** Mean length of the two sides that go across, and of the two that go up, in pixels. */
export function sideLengths([topLeft, topRight, bottomRight, bottomLeft]: Corners): { across: number; up: number } {
  const length = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
  return {
    across: (length(topLeft, topRight) + length(bottomLeft, bottomRight)) / 2,
    up: (length(topLeft, bottomLeft) + length(topRight, bottomRight)) / 2,
  };
}
