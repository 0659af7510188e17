/**
 * How far the cells of a straightened chart lie from where even spacing puts
 * them: corners set by hand, paper that was not flat, a lens that bulges.
 *
 * The phase of the edges is measured in overlapping windows all over the
 * chart and a smooth surface is laid through it. A phase is known only up to
 * whole cells; it is followed inwards from the corners, where it is small.
 */
import { Matrix, solve } from 'ml-matrix';
import { edgeShares, type Direction } from './edges.ts';
import type { Picture } from './picture.ts';

/** How far a cell lies off, in cells, at a place given in shares of the chart from its left and top, 0 … 1. */
export interface Drift {
  across(x: number, y: number): number;
  up(x: number, y: number): number;
}

/** Windows along the direction in which edges are looked for. */
const WINDOWS = 9;

/** A window whose edges come back less clearly than this is left out. */
const LEAST_CLARITY = 0.12;

/** At the corners edges lie at most this far off; where most do not, they are not those of the cells. */
const MOST_AT_CORNERS = 0.38;

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

/** Windows pull with their clarity; this pulls everything but the constant towards zero. */
const STIFFNESS = 0.02;

/** The drift of a straightened chart of `columns` × `rows` cells; none where its edges do not tell. */
export function driftOf(straight: Picture, columns: number, rows: number): Drift {
  const across = surface(windowsOf(straight, 'across', columns));
  const up = surface(windowsOf(straight, 'up', rows));
  return { across: (x, y) => across(x, y), up: (x, y) => up(y, x) };
}

/** A phase at a place in shares of the chart along the direction and across it. */
interface Window {
  readonly along: number;
  readonly beside: number;
  readonly clarity: number;
  phase: number;
}

function windowsOf(straight: Picture, direction: Direction, count: number): Window[][] {
  const bands = edgeShares(straight, direction);
  return bands.map((band, b) =>
    Array.from({ length: WINDOWS }, (_, w) => {
      const along = (w + 0.5) / WINDOWS;
      // Twice as wide as they are apart, and never less than a few cells.
      const width = band.length * Math.min(1, Math.max(2 / WINDOWS, 4 / count));
      const { phase, clarity } = phaseAround([band], count, along * band.length, width);
      return { along, beside: (b + 0.5) / bands.length, clarity, phase };
    }),
  );
}

type Surface = (along: number, beside: number) => number;

function surface(windows: readonly (readonly Window[])[]): Surface {
  const clear = followed(windows);
  if (clear.length < 2 * POWERS.length) return () => 0;
  const size = POWERS.length;
  const left = Matrix.zeros(size, size);
  const right = Matrix.zeros(size, 1);
  for (const { along, beside, clarity, phase } of clear) {
    const terms = termsAt(along, beside);
    for (let i = 0; i < size; i++) {
      const weighted = clarity * (terms[i] as number);
      right.set(i, 0, right.get(i, 0) + weighted * phase);
      for (let j = 0; j < size; j++) left.set(i, j, left.get(i, j) + weighted * (terms[j] as number));
    }
  }
  for (let i = 1; i < size; i++) left.set(i, i, left.get(i, i) + STIFFNESS * clear.length);
  const weights = solve(left, right).to1DArray();
  return (along, beside) => termsAt(along, beside).reduce((sum, term, i) => sum + term * (weights[i] as number), 0);
}

/** Places run from −1 to 1 here, so that all powers are of one size. */
function termsAt(along: number, beside: number): number[] {
  const x = 2 * along - 1;
  const y = 2 * beside - 1;
  return POWERS.map(([i, j]) => x ** i * y ** j);
}

/** The clear windows, their phases followed from the corners; none where the corners themselves are off. */
function followed(windows: readonly (readonly Window[])[]): Window[] {
  const lastBand = windows.length - 1;
  const corners = [windows[0]?.[0], windows[0]?.at(-1), windows[lastBand]?.[0], windows[lastBand]?.at(-1)].filter(
    (window) => window !== undefined && window.clarity >= LEAST_CLARITY,
  ) as Window[];
  const off = corners.filter(({ phase }) => Math.abs(phase) > MOST_AT_CORNERS).length;
  if (2 * off > corners.length) return [];
  const order = windows
    .flatMap((band, b) => band.map((window, w) => ({ window, b, w })))
    .filter(({ window }) => window.clarity >= LEAST_CLARITY)
    .sort((one, other) => fromCorner(one.b, one.w, lastBand) - fromCorner(other.b, other.w, lastBand));
  const known = new Set<Window>();
  for (const { window, b, w } of order) {
    let sum = 0;
    let count = 0;
    for (const [db, dw] of AROUND) {
      const near = windows[b + db]?.[w + dw];
      if (near && known.has(near)) {
        sum += near.phase;
        count++;
      }
    }
    if (count > 0) window.phase += Math.round(sum / count - window.phase);
    known.add(window);
  }
  return [...known];
}

const AROUND = [-1, 0, 1].flatMap((db) => [-1, 0, 1].map((dw) => [db, dw] as const));

/** Steps to the nearest corner of the windows. */
function fromCorner(band: number, window: number, lastBand: number): number {
  return Math.min(band, lastBand - band) + Math.min(window, WINDOWS - 1 - window);
}

export interface Phase {
  /** By what part of a cell edges lie after whole multiples of one: −½ … ½. */
  readonly phase: number;
  /** 0 … 1: how much of what is there comes back with the cells. */
  readonly clarity: number;
}

/**
 * The phase of edges that come back `times` times along the profiles, within
 * `width` pixels around `middle`, the middle counting most.
 */
export function phaseAround(profiles: readonly Float64Array[], times: number, middle: number, width: number): Phase {
  let re = 0;
  let im = 0;
  let total = 0;
  for (const profile of profiles) {
    const from = Math.max(0, Math.floor(middle - width / 2));
    const to = Math.min(profile.length, Math.ceil(middle + width / 2));
    for (let place = from; place < to; place++) {
      const weight = Math.cos((Math.PI * (place + 0.5 - middle)) / width) ** 2 * (profile[place] as number);
      const angle = (2 * Math.PI * (place + 0.5) * times) / profile.length;
      re += weight * Math.cos(angle);
      im += weight * Math.sin(angle);
      total += weight;
    }
  }
  return { phase: Math.atan2(im, re) / (2 * Math.PI), clarity: total === 0 ? 0 : Math.hypot(re, im) / total };
}
