/**
 * The homography that takes one quadrilateral to another: what a photo does
 * to a flat sheet.
 *
 * Four pairs of points fix it: eight equations for eight unknowns, the ninth
 * entry being 1 (Hartley and Zisserman, *Multiple View Geometry*, chapter 4,
 * from memory). The points are first moved to their centre and scaled to a
 * mean distance of √2 (Hartley's normalisation), without which coordinates in
 * the thousands cost half of the digits.
 */
import { Matrix, solve } from 'ml-matrix';
import { problemError } from '../problem/index.ts';
import { cornerFault, type Corners, type Point } from './corners.ts';

/** Nine numbers, row by row; the last is 1, unless the origin goes to infinity. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/**
 * The homography with `from[i]` → `to[i]`. Throws `corners-unusable` where
 * three points of one side lie in a line, sides cross, or there is a dent.
 */
export function homography(from: Corners, to: Corners): Homography {
  for (const corners of [from, to]) {
    const fault = cornerFault(corners, Number.MIN_VALUE);
    // Mirrored is a homography like any other; which way round is the caller's business.
    if (fault !== null && fault !== 'anticlockwise') throw problemError('corners-unusable', { fault });
  }
  const source = normalisation(from);
  const target = normalisation(to);
  const equations = new Matrix(8, 8);
  const right = new Matrix(8, 1);
  for (let i = 0; i < 4; i++) {
    const { x, y } = normalised(source, from[i] as Point);
    const { x: u, y: v } = normalised(target, to[i] as Point);
    equations.setRow(2 * i, [x, y, 1, 0, 0, 0, -u * x, -u * y]);
    equations.setRow(2 * i + 1, [0, 0, 0, x, y, 1, -v * x, -v * y]);
    right.set(2 * i, 0, u);
    right.set(2 * i + 1, 0, v);
  }
  const inner = [...solve(equations, right).to1DArray(), 1];
  const whole = Matrix.from1DArray(3, 3, inner);
  const intoSource = new Matrix([
    [source.scale, 0, -source.scale * source.centre.x],
    [0, source.scale, -source.scale * source.centre.y],
    [0, 0, 1],
  ]);
  const outOfTarget = new Matrix([
    [1 / target.scale, 0, target.centre.x],
    [0, 1 / target.scale, target.centre.y],
    [0, 0, 1],
  ]);
  const entries = outOfTarget.mmul(whole).mmul(intoSource).to1DArray();
  const last = entries[8] as number;
  // Zero where the origin of the source goes to infinity; the entries then keep the scale they have.
  const isFinite = Math.abs(last) > 1e-12 * Math.hypot(...entries);
  return (isFinite ? entries.map((entry) => entry / last) : entries) as unknown as Homography;
}

/** Where a point goes. */
export function project(h: Homography, { x, y }: Point): Point {
  const w = h[6] * x + h[7] * y + h[8];
  return { x: (h[0] * x + h[1] * y + h[2]) / w, y: (h[3] * x + h[4] * y + h[5]) / w };
}

interface Normalisation {
  readonly centre: Point;
  readonly scale: number;
}

function normalisation(corners: Corners): Normalisation {
  const centre = {
    x: corners.reduce((sum, { x }) => sum + x, 0) / 4,
    y: corners.reduce((sum, { y }) => sum + y, 0) / 4,
  };
  const meanDistance = corners.reduce((sum, { x, y }) => sum + Math.hypot(x - centre.x, y - centre.y), 0) / 4;
  return { centre, scale: Math.SQRT2 / meanDistance };
}

function normalised({ centre, scale }: Normalisation, { x, y }: Point): Point {
  return { x: (x - centre.x) * scale, y: (y - centre.y) * scale };
}
