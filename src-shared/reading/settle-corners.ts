/**
 * Corners that a person set, put on the crossings of the chart's lines: a hand
 * and an eye are off by some pixels, the lines are not.
 *
 * From the corners it is known about how large the cells are and where, so the
 * lattice is followed from there. Where a chart with the same counts is found
 * near the corners, its corners are meant. Where its ends are not seen, the
 * counts and the four corners together say which crossings they are.
 */
import { assertCorners, rectangle, sideLengths, type Corners, type Point } from './corners.ts';
import { followed, type PlacedSeed } from './follow-lattice.ts';
import { homography, project, type Homography } from './homography.ts';
import { chartOn, cornersOf, lookedAt, type Looked } from './lattice-chart.ts';
import type { Photo } from './photo.ts';
import type { Picture } from './picture.ts';
import type { Steps } from './steps.ts';

/**
 * The corners found lie at most this far from those that were set, in cells;
 * those of a chart that has the same counts may lie further off: of small cells
 * a hand misses more.
 */
const MOST_MOVED = 1.5;
const MOST_MOVED_TO_CHART = 2.5;

/** Together they are moved at most this far to a chart that may not be the one meant, in cells; or as far as they are off each in its own way. */
const MOST_TOGETHER = 0.5;

/** Crossings usually lie off their smooth lattice by 0.02 to 0.04 cells; where by more than this, some are others than they seem, and another beginning may do better. */
const GOOD_MISFIT = 0.05;

/** Crossings that the corners alone mean are taken at once where none is moved further than this, in cells. */
const HARDLY_MOVED = 0.5;

/** The middle of all four lies at most this far from that of crossings, in cells; further off it may be those beside. */
const MOST_OPEN = 0.3;

/** Cells about this wide on a level are followed best. */
const BEST_STEP = 13;

/** Where a lattice is begun, as shares of the chart. */
const BEGINNINGS = [
  [0.5, 0.5],
  [0.3, 0.3],
  [0.7, 0.7],
  [0.3, 0.7],
  [0.7, 0.3],
] as const;

/** A lattice is that of the cells if it goes on over this share of them, crossing by crossing. */
const LEAST_COVERED = 0.3;

/** Crossings are looked at so many cells apart either way (lattice.ts). */
const SPACING = 3;

/**
 * The corners on the lines of a chart of `columns` × `rows` cells; as they are
 * where no lines are found that fit. Throws as `assertCorners` does.
 */
export function* settledCorners(photo: Photo, set: Corners, columns: number, rows: number): Steps<Corners> {
  const [full] = photo.levels as [Picture];
  assertCorners(set, full.width, full.height);
  const { across, up } = sideLengths(set);
  const step = Math.min(across / columns, up / rows);
  const level = Math.max(0, Math.min(photo.levels.length - 1, Math.round(Math.log2(step / BEST_STEP))));
  const cells = homography(rectangle(columns, rows), set);
  let best: Settled | null = null;
  for (const [i, [x, y]] of BEGINNINGS.entries()) {
    const seed = seedAt(cells, { x: Math.round(x * columns), y: Math.round(y * rows) }, level);
    const lattice = followed(photo, [seed]);
    yield { stage: 'find-chart', done: (i + 0.5) / BEGINNINGS.length };
    if (lattice === null || lattice.anchors.length * SPACING ** 2 < LEAST_COVERED * columns * rows) continue;
    const looked = lookedAt(lattice);
    yield { stage: 'find-chart', done: (i + 0.9) / BEGINNINGS.length };
    const settled = settledOn(looked, set, columns, rows, step);
    if (settled !== null && (best === null || isBetter(settled, best))) best = settled;
    if (best?.isSettled) break;
  }
  return best === null ? set : (best.corners.map((corner) => onto(corner, full)) as unknown as Corners);
}

/** What the lattice from one beginning makes of the corners. */
interface Settled {
  readonly corners: Corners;
  /** They are those of a chart with these counts. */
  readonly isChart: boolean;
  readonly misfit: number;
  /** Nothing better is to be expected from another beginning. */
  readonly isSettled: boolean;
}

function isBetter(one: Settled, other: Settled): boolean {
  return one.isChart === other.isChart ? one.misfit < other.misfit : one.isChart;
}

function settledOn(looked: Looked, set: Corners, columns: number, rows: number, step: number): Settled | null {
  const { misfit } = looked.model;
  const isGood = misfit <= GOOD_MISFIT;
  const chart = foundNear(looked, set, columns, rows, step);
  if (chart) return { corners: chart, isChart: true, misfit, isSettled: isGood };
  const corners = crossingsAt(looked, set, columns, rows);
  if (corners === null || !isNear(corners, set, MOST_MOVED * step)) return null;
  return { corners, isChart: false, misfit, isSettled: isGood && isNear(corners, set, HARDLY_MOVED * step) };
}

/** In pixels of a level. */
function seedAt(cells: Homography, at: Point, level: number): PlacedSeed {
  const scale = 2 ** level;
  const placeOf = (x: number, y: number): Point => {
    const place = project(cells, { x: at.x + x, y: at.y + y });
    return { x: place.x / scale, y: place.y / scale };
  };
  const [left, right, upper, lower] = [placeOf(-0.5, 0), placeOf(0.5, 0), placeOf(0, -0.5), placeOf(0, 0.5)];
  return {
    level,
    seed: {
      at: placeOf(0, 0),
      across: { x: right.x - left.x, y: right.y - left.y },
      down: { x: lower.x - upper.x, y: lower.y - upper.y },
      score: 0,
    },
  };
}

function isNear(found: Corners, set: Corners, most: number): boolean {
  return found.every(({ x, y }, i) => {
    const corner = set[i] as Point;
    return Math.hypot(x - corner.x, y - corner.y) <= most;
  });
}

/** The corners of the chart whose ends are seen, if its counts are these. */
function foundNear(looked: Looked, set: Corners, columns: number, rows: number, step: number): Corners | null {
  const chart = chartOn(looked);
  if (chart === null || 'cutOff' in chart) return null;
  if (chart.columns !== columns || chart.rows !== rows) return null;
  if (!isNear(chart.corners, set, MOST_MOVED_TO_CHART * step)) return null;
  // Hands are off in every direction. Where all four are off in one, more than by chance, the next crossings may be meant.
  const { together, apart } = movesOf(chart.corners, set);
  return chart.sure || together <= Math.max(MOST_TOGETHER * step, apart) ? chart.corners : null;
}

/** How far all four corners are moved in one direction, and how far each besides (root of the mean square). */
function movesOf(found: Corners, set: Corners): { readonly together: number; readonly apart: number } {
  const moves = found.map(({ x, y }, i) => ({ x: x - (set[i] as Point).x, y: y - (set[i] as Point).y }));
  const mean = (of: 'x' | 'y'): number => moves.reduce((sum, move) => sum + move[of], 0) / moves.length;
  const [x, y] = [mean('x'), mean('y')];
  const apart = moves.reduce((sum, move) => sum + (move.x - x) ** 2 + (move.y - y) ** 2, 0) / moves.length;
  return { together: Math.hypot(x, y), apart: Math.sqrt(apart) };
}

/** The crossings that the four corners together mean; null where they lie between two. */
function crossingsAt(looked: Looked, set: Corners, columns: number, rows: number): Corners | null {
  const [topLeft, topRight, bottomRight, bottomLeft] = set.map((corner) => placeOn(looked, corner)) as [
    Point,
    Point,
    Point,
    Point,
  ];
  const left = (topLeft.x + bottomLeft.x + topRight.x + bottomRight.x - 2 * columns) / 4;
  const top = (topLeft.y + topRight.y + bottomLeft.y + bottomRight.y - 2 * rows) / 4;
  const [column, row] = [Math.round(left), Math.round(top)];
  if (Math.abs(left - column) > MOST_OPEN || Math.abs(top - row) > MOST_OPEN) return null;
  return cornersOf(
    looked.model,
    { left: column, right: column + columns, top: row, bottom: row + rows },
    looked.picture,
    looked.scale,
  );
}

/** Rounds in which the place on a bent lattice is found; each takes most of what is left. */
const ROUNDS = 8;

/** The column and row of a place of the photo. */
function placeOn({ model, core, scale }: Looked, { x, y }: Point): Point {
  let place = { x: (core.left + core.right) / 2, y: (core.top + core.bottom) / 2 };
  for (let round = 0; round < ROUNDS; round++) {
    const at = model.at(place.x, place.y);
    const right = model.at(place.x + 0.5, place.y);
    const below = model.at(place.x, place.y + 0.5);
    const [ax, ay] = [2 * (right.x - at.x), 2 * (right.y - at.y)];
    const [dx, dy] = [2 * (below.x - at.x), 2 * (below.y - at.y)];
    const determinant = ax * dy - ay * dx;
    const [ox, oy] = [x / scale - at.x, y / scale - at.y];
    place = { x: place.x + (ox * dy - oy * dx) / determinant, y: place.y + (ax * oy - ay * ox) / determinant };
  }
  return place;
}

function onto({ x, y }: Point, { width, height }: Picture): Point {
  return { x: Math.max(0, Math.min(width, x)), y: Math.max(0, Math.min(height, y)) };
}
