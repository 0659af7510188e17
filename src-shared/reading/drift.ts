/**
 * How far the cells of a straightened chart lie from where even spacing puts
 * them: corners set by hand, paper that was not flat, a lens that bulges.
 *
 * The phase of the edges is measured in overlapping windows all over the
 * chart and a smooth surface is laid through it. A phase is known only up to
 * whole cells; it is followed from window to window, and the surface is small
 * at the corners.
 */
import { Matrix, solve } from 'ml-matrix';
import { BANDS, edgeShares, type Direction } from './edges.ts';
import { followed, type Window } from './follow-phases.ts';
import { phaseAround } from './phase.ts';
import type { Picture } from './picture.ts';

/** How far a cell lies off, in cells, at a place given in shares of the chart from its left and top, 0 … 1. */
export interface Drift {
  across(x: number, y: number): number;
  up(x: number, y: number): number;
  /** How far, in cells, edges that are seen well lie beside the corners; null where they lie on them, or are not seen well. */
  readonly astray: number | null;
}

export const NO_DRIFT: Drift = { across: () => 0, up: () => 0, astray: null };

/** Places along each side at which {@link mostOf} looks. */
const PLACES = 8;

/** How far cells lie off at most, in cells, either way. */
export function mostOf({ across, up }: Pick<Drift, 'across' | 'up'>): number {
  const places = Array.from({ length: PLACES + 1 }, (_, i) => i / PLACES);
  return Math.max(...places.flatMap((x) => places.flatMap((y) => [Math.abs(across(x, y)), Math.abs(up(x, y))])));
}

/** Windows along the direction in which edges are looked for, at least. */
const WINDOWS = 9;

/**
 * A window, and a band of the chart, is no more than so many cells long: on bent
 * paper lines lie off by a cell within twenty, and two windows on the way of
 * one another would differ by half a cell or more, which says nothing.
 */
const MOST_CELLS = 8;
const MOST_WINDOWS = 25;

/** A window in which less than this share of what is seen in many is seen has specks, not edges: it counts the less. */
const LEAST_SEEN = 0.15;
const SEEN_IN_MANY = 0.9;

/** At the corners edges lie at most this far off; where most do not, they are not those of the cells. */
const MOST_AT_CORNERS = 0.38;

/**
 * Edges that lie off their surface by no more than this (root of the mean
 * square, in cells) are surely those of the cells. At a corner they may lie
 * further off then; where by more than this, the corner was not set on the
 * chart's, or columns or rows are fewer or more. Of 193 photographs of `npm run
 * photos` with exact and with settled corners they lie at most 0.52 off.
 */
const SMOOTH = 0.08;
const ASTRAY = 0.65;

const CORNERS = [
  [0, 0],
  [1, 0],
  [0, 1],
  [1, 1],
] as const;

/** Corners were set on the chart's: each counts as a window of this clarity, so that where no edges are seen the surface does not run off. */
const CORNER_COUNTS = 0.3;

/** Powers of the place along and across the direction that make the surface. */
const POWERS: readonly (readonly [number, number])[] = [
  [0, 0],
  [1, 0],
  [0, 1],
  [2, 0],
  [1, 1],
  [0, 2],
  [3, 0],
  [2, 1],
  [1, 2],
];

/** … and of charts so large that there are more windows or bands. */
const LARGE_POWERS: typeof POWERS = [...POWERS, [4, 0], [3, 1], [2, 2], [0, 3], [5, 0], [4, 1]];

/** Windows pull with their clarity; this pulls everything but the constant towards zero. */
const STIFFNESS = 0.002;

/** The drift of a straightened chart of `columns` × `rows` cells; none where its edges do not tell. */
export function driftOf(straight: Picture, columns: number, rows: number): Drift {
  const across = surface(windowsOf(straight, 'across', columns, rows));
  const up = surface(windowsOf(straight, 'up', rows, columns));
  const astray = Math.max(across.astray, up.astray);
  return { across: (x, y) => across.at(x, y), up: (x, y) => up.at(y, x), astray: astray > ASTRAY ? astray : null };
}

/**
 * How many cells lie between the corners along a direction, at the first and
 * at the last of the sides that run along it, by edges that come back about
 * `times` times; `beside` is about how many there are the other way. The
 * middle of bent paper bulges beyond the straight line between two corners and
 * shows more cells, or fewer; its edges do not. Null where edges do not tell:
 * too few of them are clear, or they lie on no smooth surface.
 */
export function cellsAlongSides(
  straight: Picture,
  direction: Direction,
  times: number,
  beside: number,
): readonly [first: number, last: number] | null {
  const windows = windowsOf(straight, direction, times, beside);
  const clear = followed(windows);
  const powers = powersFor(windows);
  if (clear.length < 2 * powers.length) return null;
  const at = laidThrough(clear, powers);
  if (misfitOf(clear, at) > SMOOTH) return null;
  // The edge that ends `count` cells lies `times − count` further on than the one that begins them.
  const along = (side: 0 | 1): number => times - (at(1, side) - at(0, side));
  return [along(0), along(1)];
}

function windowsOf(straight: Picture, direction: Direction, count: number, beside: number): Window[][] {
  const many = (cells: number, least: number): number =>
    Math.max(least, Math.min(MOST_WINDOWS, Math.ceil(cells / MOST_CELLS)));
  const windows = many(count, WINDOWS);
  // A line runs on from cell to cell; a sign inside a cell has edges too, but with gaps between. Squared, lines win.
  const bands = edgeShares(straight, direction, many(beside, BANDS)).map((shares) =>
    shares.map((share) => share * share),
  );
  const all = bands.map((band, b) =>
    Array.from({ length: windows }, (_, w) => {
      const along = (w + 0.5) / windows;
      // Twice as wide as they are apart, and never less than a few cells.
      const width = band.length * Math.min(1, Math.max(2 / windows, 4 / count));
      const { phase, clarity, seen } = phaseAround([band], count, along * band.length, width);
      return { along, beside: (b + 0.5) / bands.length, clarity, phase, seen };
    }),
  );
  const each = all.flatMap((band) => band.map(({ seen }) => seen)).sort((one, other) => one - other);
  const enough = LEAST_SEEN * (each[Math.floor(SEEN_IN_MANY * (each.length - 1))] as number);
  return all.map((band) =>
    band.map(({ seen, clarity, ...window }) => ({
      ...window,
      clarity: seen < enough ? (clarity * seen) / enough : clarity,
    })),
  );
}

/** Rounds in which windows that do not agree are asked less, and how far off, in cells, makes one count half. */
const ROUNDS = 4;
const MISFIT = 0.3;

type Surface = (along: number, beside: number) => number;

interface Laid {
  readonly at: Surface;
  /** How far edges that are surely those of the cells lie off at a corner, in cells. */
  readonly astray: number;
}

const NONE_LAID: Laid = { at: () => 0, astray: 0 };

function surface(windows: readonly (readonly Window[])[]): Laid {
  const clear = followed(windows);
  const powers = powersFor(windows);
  if (clear.length < 2 * powers.length) return NONE_LAID;
  const free = laidThrough(clear, powers);
  const isSmooth = misfitOf(clear, free) <= SMOOTH;
  const { turns, offs } = atCornersOf(free);
  const astray = offs.filter((off) => off > MOST_AT_CORNERS).length;
  // Where most corners lie off, or half of them far, the edges are not those of the cells, unless they are so surely.
  const far = offs.filter((off) => off > ASTRAY).length;
  if (!isSmooth && (2 * astray > offs.length || 2 * far >= offs.length)) return NONE_LAID;
  const set = CORNERS.map(([along, beside]) => ({ along, beside, clarity: CORNER_COUNTS, phase: turns }));
  const held = laidThrough([...clear, ...set], powers);
  return { at: (along, beside) => held(along, beside) - turns, astray: isSmooth ? Math.max(...offs) : 0 };
}

function powersFor(windows: readonly (readonly Window[])[]): typeof POWERS {
  const isLarge = windows.length > BANDS || (windows[0]?.length ?? 0) > WINDOWS;
  return isLarge ? LARGE_POWERS : POWERS;
}

/** How far windows lie off a surface: the root of the mean square, in cells, each by its clarity. */
function misfitOf(windows: readonly Window[], at: Surface): number {
  let [sum, counts] = [0, 0];
  for (const { along, beside, clarity, phase } of windows) {
    sum += clarity * (phase - at(along, beside)) ** 2;
    counts += clarity;
  }
  return Math.sqrt(sum / counts);
}

/** Windows that do not agree with the others are asked less in each round. */
function laidThrough(windows: readonly Window[], powers: typeof POWERS): Surface {
  let weights = fitted(windows, powers, () => 1);
  const at = (along: number, beside: number): number =>
    termsAt(along, beside, powers).reduce((sum, term, i) => sum + term * (weights[i] as number), 0);
  for (let round = 0; round < ROUNDS; round++) {
    // A window that was led astray says something of its own; the others agree.
    weights = fitted(
      windows,
      powers,
      ({ along, beside, phase }) => 1 / (1 + ((phase - at(along, beside)) / MISFIT) ** 2),
    );
  }
  return at;
}

/**
 * By how many whole cells the surface is to be moved to be small at the
 * corners, which a hand has set, and how far off each of them it is then.
 */
function atCornersOf(at: Surface): { readonly turns: number; readonly offs: readonly number[] } {
  const corners = CORNERS.map(([along, beside]) => at(along, beside));
  const turns = Math.round(corners.reduce((sum, off) => sum + off, 0) / corners.length);
  return { turns, offs: corners.map((off) => Math.abs(off - turns)) };
}

/** The surface's weights by least squares; windows count with their clarity and what `trust` says of them. */
function fitted(windows: readonly Window[], powers: typeof POWERS, trust: (window: Window) => number): number[] {
  const size = powers.length;
  const left = Matrix.zeros(size, size);
  const right = Matrix.zeros(size, 1);
  for (const window of windows) {
    const { along, beside, clarity, phase } = window;
    const terms = termsAt(along, beside, powers);
    const counts = clarity * trust(window);
    for (let i = 0; i < size; i++) {
      const weighted = counts * (terms[i] as number);
      right.set(i, 0, right.get(i, 0) + weighted * phase);
      for (let j = 0; j < size; j++) left.set(i, j, left.get(i, j) + weighted * (terms[j] as number));
    }
  }
  for (let i = 1; i < size; i++) left.set(i, i, left.get(i, i) + STIFFNESS * windows.length);
  return solve(left, right).to1DArray();
}

/** Places run from −1 to 1 here, so that all powers are of one size. */
function termsAt(along: number, beside: number, powers: typeof POWERS): number[] {
  const x = 2 * along - 1;
  const y = 2 * beside - 1;
  return powers.map(([i, j]) => x ** i * y ** j);
}
