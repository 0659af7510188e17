/** The ways cells of a chart of symbols look, told from dirt, and how far apart two of them are. */
import { Matrix, solve } from 'ml-matrix';
import { findGroups, some } from './clusters.ts';
import { nearestOf, squaredDistance } from './k-means.ts';
import { SYMBOL_NUMBERS, SYMBOL_SIDE } from './symbols.ts';

/** Cells whose places differ by less than this on the whole (root of the mean square, of the darkest ink) look alike. */
const LEAST_DIFFERENCE = 0.055;

/**
 * Two looks are one symbol if they differ by less than this once one is moved
 * over the other by up to a place. Of the photographs 10000 to 10530 of `npm
 * run photos` looks of one symbol that lies a little to the side differ by at
 * most 0.053, and those of two symbols by 0.082 at least,
 * but for one that nobody could tell apart.
 */
const LEAST_WHEN_MOVED = 0.065;

/** So far one look is moved over the other, in places, and by such steps. */
const MOST_MOVED = 1;
const MOVED_BY = 0.25;

/**
 * Looks of so few cells are dirt on them, not a symbol; and those of such a
 * share of all cells that do not even look alike, differing by so much from
 * what they have in common.
 */
const SPECKS = 4;
const MOST_SPECKS_SHARE = 0.02;
const SPECKS_SHARE = 0.005;
const SPECKS_SPREAD = 0.06;

/** A spot takes no more places than this, to where it is this share of its darkest; the smallest symbols take 12. */
const MOST_SPOT = 9;
const SPOT_SHARE = 0.3;

/**
 * Cells that hardly differ when moved are of two symbols all the same where
 * each is of so many cells and they lie so many times their spread apart, with
 * nothing in between: small rings and boxes in a blurred photo. Looks of one
 * symbol run into one another: of 8 photographs of `npm run photos` with three
 * corners each they lie at most 5.6 times apart, rings and boxes at least 11.
 * Fewer cells part by chance, since they are looked at so that they do.
 */
const CELLS_OF_PARTED = 40;
const PARTED_TIMES = 7;

/** Places that hardly differ within a symbol count as if they did by this share of the mean. */
const STIFFNESS = 0.3;

/** Ink paler than this is grain of the paper: a blank chart. */
const LEAST_INK = 0.12;

/** Darkness as a share of the darkest ink; nothing where there is no ink at all. */
export function inShareOfInk(symbols: Float64Array): Float64Array {
  const darkest = symbols.slice().sort()[Math.floor(symbols.length * 0.995)] ?? 0;
  return darkest < LEAST_INK ? new Float64Array(symbols.length) : symbols.map((value) => value / darkest);
}

/**
 * How little cells differ from what others look like, on the whole: where they
 * were looked for beside their places each differs in its own way.
 */
export function unlikeness(symbols: Float64Array): number {
  const even = inShareOfInk(symbols);
  const looks = looksOf(even);
  const own = distancesTo(even, looks, nearestOf(even, looks, SYMBOL_NUMBERS));
  return own.reduce((sum, distance) => sum + distance, 0) / own.length;
}

/** The ways cells look, more than there are symbols. */
export function looksOf(even: Float64Array): Float64Array {
  const looked = some(even, new Uint8Array(even.length / SYMBOL_NUMBERS).fill(1), SYMBOL_NUMBERS);
  const difference = (one: readonly number[], other: readonly number[]): number =>
    rootMeanSquare(one, other) / LEAST_DIFFERENCE;
  return findGroups(looked, SYMBOL_NUMBERS, null, difference, false).centres;
}

/** How far each cell is from its look. */
export function distancesTo(even: Float64Array, looks: Float64Array, nearest: Uint8Array): Float64Array {
  return Float64Array.from(nearest, (look, cell) =>
    Math.sqrt(squaredDistance(even, cell, looks, look, SYMBOL_NUMBERS) / SYMBOL_NUMBERS),
  );
}

export interface Kept {
  readonly looks: Float64Array;
  /** 1 for each cell that looks otherwise: dirt lies on it. */
  readonly isSpeck: Uint8Array;
}

/** The looks that are not dirt, all of them where none is left; `isStrict`: no look of few cells is kept. */
export function withoutSpecks(even: Float64Array, looks: Float64Array, isStrict: boolean): Kept {
  const nearest = nearestOf(even, looks, SYMBOL_NUMBERS);
  const own = distancesTo(even, looks, nearest);
  const all = Array.from({ length: looks.length / SYMBOL_NUMBERS }, (_, look) => {
    const cells = [...nearest.keys()].filter((cell) => nearest[cell] === look);
    const spread = cells.reduce((sum, cell) => sum + (own[cell] as number), 0) / cells.length;
    return { look: looks.subarray(look * SYMBOL_NUMBERS, (look + 1) * SYMBOL_NUMBERS), many: cells.length, spread };
  });
  const few = SPECKS_SHARE * nearest.length;
  const common = all.filter(({ many }) => many > few).map(({ look }) => look);
  const isDirt = all.map(({ look, many, spread }) => {
    if (many <= Math.min(SPECKS, MOST_SPECKS_SHARE * nearest.length)) return true;
    return many <= few && (isStrict || spread > SPECKS_SPREAD || common.some((other) => isSpotOn(look, other)));
  });
  const kept = all.flatMap(({ look }, i) => (isDirt[i] ? [] : [...look]));
  if (kept.length === 0) return { looks, isSpeck: new Uint8Array(nearest.length) };
  return { looks: Float64Array.from(kept), isSpeck: nearest.map((look) => (isDirt[look] ? 1 : 0)) };
}

/** Whether some kind is of so few cells that it may be dirt, though all look alike. */
export function isHandful(kinds: Uint8Array): boolean {
  const cells = new Map<number, number>();
  for (const kind of kinds) cells.set(kind, (cells.get(kind) ?? 0) + 1);
  return [...cells.values()].some((many) => many <= SPECKS_SHARE * kinds.length);
}

/** Whether a look is the other with a spot on it: it differs in a few places alone. */
function isSpotOn(look: Float64Array, other: Float64Array): boolean {
  const differences = look.map((value, place) => Math.abs(value - (other[place] as number)));
  const most = Math.max(...differences);
  return differences.filter((difference) => difference > SPOT_SHARE * most).length <= MOST_SPOT;
}

/** How far apart two looks are, below 1 being one symbol. */
export function apartOf(one: readonly number[], other: readonly number[]): number {
  return apartWhenMoved(one, other) / LEAST_WHEN_MOVED;
}

/**
 * Whether nothing lies between these cells and those, looked at so that they
 * part best (Fisher 1936): what differs among cells of one symbol, as where it
 * lies, is left out of account.
 */
export function areParted(even: Float64Array, these: readonly number[], those: readonly number[]): boolean {
  if (Math.min(these.length, those.length) < CELLS_OF_PARTED) return false;
  const [one, other] = [meanOf(even, these), meanOf(even, those)];
  const apart = one.map((value, place) => value - (other[place] as number));
  const within = Matrix.zeros(SYMBOL_NUMBERS, SYMBOL_NUMBERS);
  for (const [cells, mean] of [
    [these, one],
    [those, other],
  ] as const) {
    for (const cell of cells) {
      const off = mean.map((value, place) => (even[cell * SYMBOL_NUMBERS + place] as number) - value);
      for (let i = 0; i < SYMBOL_NUMBERS; i++) {
        for (let j = 0; j < SYMBOL_NUMBERS; j++) {
          within.set(i, j, within.get(i, j) + ((off[i] as number) * (off[j] as number)) / cells.length / 2);
        }
      }
    }
  }
  const stiff = STIFFNESS * (within.trace() / SYMBOL_NUMBERS) + 1e-9;
  for (let i = 0; i < SYMBOL_NUMBERS; i++) within.set(i, i, within.get(i, i) + stiff);
  const way = solve(within, Matrix.columnVector(apart)).to1DArray();
  const [here, there] = [alongWay(even, these, way), alongWay(even, those, way)];
  return here.mean - there.mean > (PARTED_TIMES * (here.spread + there.spread)) / 2;
}

function meanOf(even: Float64Array, cells: readonly number[]): number[] {
  return Array.from(
    { length: SYMBOL_NUMBERS },
    (_, place) => cells.reduce((sum, cell) => sum + (even[cell * SYMBOL_NUMBERS + place] as number), 0) / cells.length,
  );
}

interface Along {
  readonly mean: number;
  /** Standard deviation. */
  readonly spread: number;
}

/** Where cells lie along the way from one look to another. */
function alongWay(even: Float64Array, cells: readonly number[], way: readonly number[]): Along {
  const places = cells.map((cell) =>
    way.reduce((sum, value, place) => sum + value * (even[cell * SYMBOL_NUMBERS + place] as number), 0),
  );
  const mean = places.reduce((sum, place) => sum + place, 0) / places.length;
  const variance = places.reduce((sum, place) => sum + (place - mean) ** 2, 0) / places.length;
  return { mean, spread: Math.sqrt(variance) + 1e-9 };
}

/** How far apart two looks are when one is moved to whichever side fits best: half the way each, which softens both alike. */
function apartWhenMoved(one: readonly number[], other: readonly number[]): number {
  let least = Infinity;
  for (let down = -MOST_MOVED; down <= MOST_MOVED; down += MOVED_BY) {
    for (let right = -MOST_MOVED; right <= MOST_MOVED; right += MOVED_BY) {
      const [here, there]: [number[], number[]] = [[], []];
      for (let y = 0; y < SYMBOL_SIDE; y++) {
        for (let x = 0; x < SYMBOL_SIDE; x++) {
          const a = between(one, x + right / 2, y + down / 2);
          const b = between(other, x - right / 2, y - down / 2);
          if (a === null || b === null) continue;
          here.push(a);
          there.push(b);
        }
      }
      least = Math.min(least, rootMeanSquare(here, there));
    }
  }
  return least;
}

/** A look between its places (bilinear); null outside them. */
function between(look: readonly number[], x: number, y: number): number | null {
  const last = SYMBOL_SIDE - 1;
  if (x < 0 || y < 0 || x > last || y > last) return null;
  const [left, top] = [Math.min(last - 1, Math.floor(x)), Math.min(last - 1, Math.floor(y))];
  const [u, v] = [x - left, y - top];
  const at = (column: number, row: number): number => look[row * SYMBOL_SIDE + column] as number;
  const upper = at(left, top) * (1 - u) + at(left + 1, top) * u;
  const lower = at(left, top + 1) * (1 - u) + at(left + 1, top + 1) * u;
  return upper * (1 - v) + lower * v;
}

function rootMeanSquare(one: readonly number[], other: readonly number[]): number {
  return Math.sqrt(one.reduce((sum, value, i) => sum + (value - (other[i] as number)) ** 2, 0) / one.length);
}
