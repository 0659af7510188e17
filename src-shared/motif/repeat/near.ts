/**
 * Near repeats: what a hand-drawn chart was meant to repeat as.
 *
 * A cell is a slip if it disagrees with what most of the cells are that a repeat
 * of p would make its copies. Where as many are one as another, of two copies
 * always, nothing tells which is right: all of them are listed, and count as few
 * slips as there are cells to change. Of all p with few enough slips, the one with the
 * fewest is offered; multiples of a good p offer nothing new and are left out.
 *
 * Counting majorities for every p would cost a pass over the cells each. So p
 * is first ruled out by what copies that stand beside each other tell, compared
 * 32 cells at a time on bit planes and given up as soon as there are too many
 * slips. A multiple of p has at most as many slips as p, so what rules it out
 * rules p out as well, and a drawing without any repeat is compared at half of
 * all distances only. Both are exact.
 */
import type { Grid } from '../../grid/index.ts';
import { BitPlanes } from './bit-planes.ts';

/** A cell that breaks a repeat which the rest of the drawing keeps. */
export interface Slip {
  readonly column: number;
  readonly row: number;
  /** What more of its copies have there than anything else, or null where none is: then each copy is listed, and none is blamed. */
  readonly expected: number | null;
}

/** The repeat that was probably meant, and the cells that break it. */
export interface NearRepeat {
  readonly width: number;
  readonly height: number;
  readonly slips: readonly Slip[];
}

/** Slips may be at most this share of all cells … */
export const MOST_SLIPS = 0.02;
/** … and at most this share of the figure, or a few dots on a ground would all be slips. */
const MOST_SLIPS_OF_FIGURE = 0.25;

/**
 * The near repeat of a drawing whose exact repeat is `exact`, or null if no
 * smaller one is near. Across and up are judged apart, then together.
 */
export function nearRepeat(grid: Grid, ground: number, exact: { width: number; height: number }): NearRepeat | null {
  const limit = slipLimit(grid, ground);
  if (limit < 1) return null;
  const planes = new BitPlanes(grid);
  const colours = 2 ** planes.depth;
  const width = bestPeriod(
    Math.min(exact.width - 1, Math.floor(grid.width / 2)),
    limit,
    (p) => planes.differAcross(p, 2 * limit),
    (p) => countSlips(grid, colours, p, exact.height),
  );
  const height = bestPeriod(
    Math.min(exact.height - 1, Math.floor(grid.height / 2)),
    limit,
    (q) => planes.slipUp(q, limit),
    (q) => countSlips(grid, colours, exact.width, q),
  );
  for (const [p, q] of [
    [width ?? exact.width, height ?? exact.height],
    [width ?? exact.width, exact.height],
    [exact.width, height ?? exact.height],
  ] as const) {
    if (p === exact.width && q === exact.height) continue;
    const breaking = countSlips(grid, colours, p, q);
    if (breaking > 0 && breaking <= limit) return { width: p, height: q, slips: slipsOf(grid, colours, p, q) };
  }
  return null;
}

/** How many cells may be slips. */
function slipLimit(grid: Grid, ground: number): number {
  const { cells } = grid;
  let figure = 0;
  for (let at = 0; at < cells.length; at++) {
    // 1 for a cell that differs; a branch on every cell of a busy drawing would cost ten times as much.
    const apart = (cells[at] as number) ^ ground;
    figure += (apart | -apart) >>> 31;
  }
  return Math.floor(Math.min(MOST_SLIPS * cells.length, MOST_SLIPS_OF_FIGURE * figure));
}

/**
 * The p from 1 to `most` with the fewest slips, at most `limit`, leaving out
 * multiples of one already found; null if there is none. `isOut` says of a p
 * that it has more, as far as that is quickly seen.
 */
function bestPeriod(
  most: number,
  limit: number,
  isOut: (period: number) => boolean,
  slips: (period: number) => number,
): number | null {
  let best: number | null = null;
  let fewest = limit + 1;
  const found: number[] = [];
  const verdicts = new Map<number, boolean>();
  const isKnownOut = (period: number): boolean => {
    const known = verdicts.get(period) ?? isOut(period);
    verdicts.set(period, known);
    return known;
  };
  for (let period = 1; period <= most; period++) {
    if (found.some((divisor) => period % divisor === 0)) continue;
    if (isKnownOut(most - (most % period)) || isKnownOut(period)) continue;
    const count = slips(period);
    if (count > limit) continue;
    found.push(period);
    if (count < fewest) {
      fewest = count;
      best = period;
    }
  }
  return best;
}

/** How many cells break the repeat p × q. */
function countSlips(grid: Grid, colours: number, p: number, q: number): number {
  const counts = countCopies(grid, colours, p, q);
  let agreeing = 0;
  for (let at = 0; at < counts.length; at += colours) {
    let most = 0;
    for (let colour = 0; colour < colours; colour++) most = Math.max(most, counts[at + colour] as number);
    agreeing += most;
  }
  return grid.cells.length - agreeing;
}

/** How often each colour stands in the copies of each cell of the repeat p × q; reads the drawing from end to end. */
function countCopies({ width, height, cells }: Grid, colours: number, p: number, q: number): Uint32Array {
  const counts = new Uint32Array(p * q * colours);
  for (let row = 0, at = 0; row < height; row++) {
    const home = (row % q) * p * colours;
    for (let column = 0; column < width; column += p) {
      const end = at + Math.min(p, width - column);
      for (let place = home; at < end; at++, place += colours) {
        const kind = place + (cells[at] as number);
        counts[kind] = (counts[kind] as number) + 1;
      }
    }
  }
  return counts;
}

/** Stands for no colour: as many copies have one as another. */
const OPEN = 255;

/** The slips of the repeat p × q, by row and column. */
function slipsOf({ width, height, cells }: Grid, colours: number, p: number, q: number): Slip[] {
  const counts = countCopies({ width, height, cells }, colours, p, q);
  const expected = new Uint8Array(p * q);
  for (let place = 0; place < expected.length; place++) {
    let [most, best] = [0, OPEN];
    for (let colour = 0; colour < colours; colour++) {
      const count = counts[place * colours + colour] as number;
      if (count === most) best = OPEN;
      if (count > most) [most, best] = [count, colour];
    }
    expected[place] = best;
  }
  const slips: Slip[] = [];
  for (let row = 0, at = 0; row < height; row++) {
    for (let column = 0; column < width; column += p) {
      const end = Math.min(p, width - column);
      for (let place = (row % q) * p, into = 0; into < end; into++, place++, at++) {
        const meant = expected[place] as number;
        if (cells[at] === meant) continue;
        slips.push({ column: column + into, row, expected: meant === OPEN ? null : meant });
      }
    }
  }
  return slips;
}

/** The first slip of each place of the repeat where its copies differ and none is blamed, by row and column. */
export function openSlips({ width, height, slips }: NearRepeat): Slip[] {
  const seen = new Set<number>();
  return slips.filter(({ column, row, expected }) => {
    if (expected !== null) return false;
    const place = (row % height) * width + (column % width);
    return !seen.has(place) && seen.add(place);
  });
}
