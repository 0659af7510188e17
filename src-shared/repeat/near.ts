/**
 * Near repeats: what a hand-drawn chart was meant to repeat as.
 *
 * A cell is a slip if it disagrees with the majority of the cells that a repeat
 * of p would make its copies. Of all p with few enough slips, the one with the
 * fewest is offered; multiples of a good p offer nothing new and are left out.
 *
 * Counting majorities for every p would cost a pass over the cells each. So two
 * cheaper tests come first. If p leaves s slips, at most 2 s neighbouring
 * copies differ, and the number of differing neighbours is counted on bit
 * planes, 32 cells at a time, giving up as soon as there are too many (exact).
 * For repeats upwards, where there may be thousands of p, rows are first
 * reduced to a few numbers (echo.ts).
 */
import type { Grid } from '../grid/index.ts';
import { BitPlanes } from './bit-planes.ts';
import { likelyEchoes } from './echo.ts';

/** A cell that breaks a repeat which the rest of the drawing keeps. */
export interface Slip {
  readonly column: number;
  readonly row: number;
  /** What its copies have there, by majority. */
  readonly expected: number;
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
  const width = bestPeriod(exact.width, Math.floor(grid.width / 2), limit, (p, most) =>
    planes.differAcross(p, 2 * most) ? Infinity : countSlips(grid, p, exact.height, most),
  );
  const lags = likelyEchoes(grid, Math.floor(grid.height / 2), 2 * limit);
  const height = bestPeriod(exact.height, Math.floor(grid.height / 2), limit, (q, most) =>
    lags[q] === 0 || planes.differUp(q, 2 * most) ? Infinity : countSlips(grid, exact.width, q, most),
  );
  for (const [p, q] of [
    [width, height],
    [width, exact.height],
    [exact.width, height],
  ] as const) {
    if (p === exact.width && q === exact.height) continue;
    const slips = slipsOf(grid, p, q);
    if (slips.length > 0 && slips.length <= limit) return { width: p, height: q, slips };
  }
  return null;
}

/** How many cells may be slips. */
function slipLimit(grid: Grid, ground: number): number {
  let figure = 0;
  for (const cell of grid.cells) if (cell !== ground) figure++;
  return Math.floor(Math.min(MOST_SLIPS * grid.cells.length, MOST_SLIPS_OF_FIGURE * figure));
}

/** The p below `exact` with the fewest slips, at most `limit`, leaving out multiples of one already found; else `exact`. */
function bestPeriod(
  exact: number,
  most: number,
  limit: number,
  slips: (period: number, most: number) => number,
): number {
  let best = exact;
  let fewest = limit + 1;
  const found: number[] = [];
  for (let period = 1; period <= most && period < exact; period++) {
    if (found.some((divisor) => period % divisor === 0)) continue;
    const count = slips(period, limit);
    if (count > limit) continue;
    found.push(period);
    if (count < fewest) {
      fewest = count;
      best = period;
    }
  }
  return best;
}

/** Slips of the repeat p × q, or Infinity as soon as there are more than `most`. */
function countSlips(grid: Grid, p: number, q: number, most: number): number {
  let slips = 0;
  for (let row = 0; row < q; row++) {
    for (let column = 0; column < p; column++) {
      slips += disagreeing(grid, column, row, p, q).slips;
      if (slips > most) return Infinity;
    }
  }
  return slips;
}

/** The slips of the repeat p × q, by row and column. */
function slipsOf(grid: Grid, p: number, q: number): Slip[] {
  const slips: Slip[] = [];
  for (let row = 0; row < q; row++) {
    for (let column = 0; column < p; column++) {
      const { slips: count, majority } = disagreeing(grid, column, row, p, q);
      if (count === 0) continue;
      for (let r = row; r < grid.height; r += q) {
        for (let c = column; c < grid.width; c += p) {
          if (grid.cells[r * grid.width + c] !== majority) slips.push({ column: c, row: r, expected: majority });
        }
      }
    }
  }
  return slips.sort((a, b) => a.row - b.row || a.column - b.column);
}

const counts = new Uint32Array(256);

/** How many of the copies of a cell disagree with most of them; of equally many, the cell drawn first counts. */
function disagreeing(
  grid: Grid,
  column: number,
  row: number,
  p: number,
  q: number,
): { slips: number; majority: number } {
  const { width, height, cells } = grid;
  const first = cells[row * width + column] as number;
  let total = 0;
  let same = 0;
  for (let r = row; r < height; r += q) {
    for (let c = column; c < width; c += p) {
      total++;
      if (cells[r * width + c] === first) same++;
    }
  }
  if (same === total) return { slips: 0, majority: first };
  counts.fill(0);
  let majority = first;
  for (let r = row; r < height; r += q) {
    for (let c = column; c < width; c += p) {
      const cell = cells[r * width + c] as number;
      counts[cell] = (counts[cell] as number) + 1;
      if ((counts[cell] as number) > (counts[majority] as number)) majority = cell;
    }
  }
  return { slips: total - (counts[majority] as number), majority };
}
