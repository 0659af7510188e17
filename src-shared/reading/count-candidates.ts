/** Counts that the edges of a straightened chart speak for, in one direction: the peaks of their spectrum. */
import { endMisfit } from './count-at-ends.ts';
import { edgeShares, type Direction } from './edges.ts';
import type { Picture } from './picture.ts';
import { peaksOf, type Peak } from './spectrum.ts';

/** A cell narrower than this many pixels cannot be told from its lines. */
const LEAST_CELL_PIXELS = 4;

/** Fewer cells than this are counted faster by eye. */
const LEAST_COUNT = 4;

/** Spectra begin below the least count, so that it can stand out on both sides. */
const SPECTRUM_FROM = 2;

/** A peak must stand out this much. Noise reaches 2; a coarse motif 3.5 at a few times. */
const STANDS_OUT = 3.5;

/** … or this much, if twice and three times as many do too. */
const STANDS_OUT_TOGETHER = 2.5;

/** To be the half of another, it must be alone among peaks that stand out this much. */
const HALF_STANDS_OUT = 2.5;

/** Lines of cells at least this wide show both their sides, and those may come back more often than the cells. */
const RESOLVED_CELL_PIXELS = 14;

/** Edges that come back with the cells lie this near to both ends of the chart, in cells … */
const MOST_END_MISFIT = 0.35;

/** … and those that do not count by this share. */
const OFF_ENDS = 0.3;

/** Peaks as near to another as this are its shoulders. */
export const SHOULDER = 2.5;

/** Cells narrower than this many pixels come back more weakly than larger parts of a motif, by blur alone. */
const BLURRED_CELL_PIXELS = 10.5;

/** Nearer above a count than this lie the mirror images of what its motif repeats. */
const BLURRED_FROM = 1.6;

/** Where the other count is known and makes such cells likely, the strongest peak may be lower than what stands out, and is doubted … */
const HINTS = 2.5;

/** … if none that would make likely cells as well comes near it. */
const MOST_RIVAL_OF_HINT = 0.75;

/** Height of a cell for a width of 1: knitted, square, and some way beyond. */
const LEAST_ASPECT = 0.4;
const MOST_ASPECT = 1.8;

/** What the edges in one direction say. */
export interface Edges {
  readonly direction: Direction;
  readonly edges: readonly Float64Array[];
  readonly length: number;
  readonly all: readonly Peak[];
}

/** … where something comes back evenly. */
export interface Candidates extends Edges {
  /** Of all those that stand out. */
  readonly peaks: readonly Peak[];
  readonly chosen: Peak;
}

/** Null of a chart that is too small to have cells. */
export function candidates(straight: Picture, direction: Direction): Edges | null {
  const edges = edgeShares(straight, direction);
  const length = (edges[0] as Float64Array).length;
  const most = Math.floor(length / LEAST_CELL_PIXELS);
  if (most <= LEAST_COUNT) return null;
  const all = peaksOf(edges, SPECTRUM_FROM, most).map((peak) => {
    const misfit = length / peak.times < RESOLVED_CELL_PIXELS ? 0 : endMisfit(edges, peak.times);
    return misfit > MOST_END_MISFIT ? { ...peak, strength: peak.strength * OFF_ENDS } : peak;
  });
  return { direction, edges, length, all };
}

/** Null where nothing comes back evenly. */
export function known(seen: Edges | null): Candidates | null {
  if (seen === null) return null;
  const { all, length } = seen;
  const peaks = all.filter((peak) => peak.times >= LEAST_COUNT - 0.5 && standsOut(peak, all));
  const strongest = strongestOf(peaks);
  if (strongest === null) return null;
  const best = bestOf(peaks, strongest);
  return { ...seen, peaks, chosen: halfOf(best, all) ?? blurredOf(best, peaks, length) ?? best };
}

/** Height of a cell for a width of 1. */
export function aspectOf(columns: Pick<Edges, 'length'>, across: Peak, rows: Pick<Edges, 'length'>, up: Peak): number {
  return rows.length / up.times / (columns.length / across.times);
}

export function isLikelyAspect(aspect: number): boolean {
  return aspect >= LEAST_ASPECT && aspect <= MOST_ASPECT;
}

/** What comes back weakly, if it alone makes cells of a likely shape with what is known the other way. */
export function hinted(seen: Edges | null, other: Candidates | null): Candidates | null {
  if (seen === null || other === null) return null;
  const isLikely = (peak: Peak): boolean => {
    const [one, another] = [seen.length / peak.times, other.length / other.chosen.times];
    const aspect = seen.direction === 'up' ? one / another : another / one;
    return peak.times >= LEAST_COUNT - 0.5 && isLikelyAspect(aspect);
  };
  const peaks = seen.all.filter(isLikely);
  const chosen = strongestOf(peaks);
  if (chosen === null || chosen.height < HINTS) return null;
  const rivals = peaks.filter(({ times }) => Math.abs(times - chosen.times) > SHOULDER);
  const rival = strongestOf(rivals)?.strength ?? 0;
  return rival > MOST_RIVAL_OF_HINT * chosen.strength ? null : { ...seen, peaks, chosen };
}

/** By itself, or less but together with twice and three times as many: a few large cells without lines. */
function standsOut({ times, height }: Peak, all: readonly Peak[]): boolean {
  if (height >= STANDS_OUT) return true;
  return [1, 2, 3].every((multiple) =>
    all.some((peak) => peak.height >= STANDS_OUT_TOGETHER && Math.abs(peak.times - multiple * times) <= 0.4 * multiple),
  );
}

export function strongestOf(peaks: readonly Peak[]): Peak | null {
  return peaks.reduce<Peak | null>(
    (best, peak) => (best === null || peak.strength > best.strength ? peak : best),
    null,
  );
}

/**
 * Of about equally strong peaks the first whose double is strong too, as is
 * that of fine lines; else the largest, since parts of a count never outdo it by much.
 */
function bestOf(peaks: readonly Peak[], strongest: Peak): Peak {
  const equal = peaks.filter(({ strength }) => strength >= 0.9 * strongest.strength);
  const isFineLines = ({ times }: Peak): boolean =>
    peaks.some((peak) => peak.strength >= 0.5 * strongest.strength && Math.abs(peak.times - 2 * times) <= 1);
  return equal.find(isFineLines) ?? (equal.at(-1) as Peak);
}

/** The peak at half as many times, if it is the only other one of account but for its multiples. */
function halfOf(best: Peak, peaks: readonly Peak[]): Peak | null {
  const ofAccount = peaks.filter(
    ({ times, strength, height }) =>
      height >= HALF_STANDS_OUT && strength >= 0.25 * best.strength && times < best.times - SHOULDER,
  );
  const half = strongestOf(ofAccount);
  if (half === null || Math.abs(half.times * 2 - best.times) > 1 || half.strength < 0.4 * best.strength) return null;
  return ofAccount.every(({ times }) => Math.abs(times - half.times) <= SHOULDER) ? half : null;
}

/** The largest count of small cells, if those that come back more often than `best` are not just its multiples. */
function blurredOf(best: Peak, peaks: readonly Peak[], length: number): Peak | null {
  const small = peaks.filter(
    ({ times, strength }) =>
      times > BLURRED_FROM * best.times && length / times < BLURRED_CELL_PIXELS && strength >= 0.45 * best.strength,
  );
  if (small.every(({ times }) => isMultiple(times, best.times))) return null;
  const strongest = strongestOf(small) as Peak;
  return small.findLast(({ strength }) => strength >= 0.67 * strongest.strength) as Peak;
}

export function isMultiple(times: number, of: number): boolean {
  const multiple = Math.round(times / of);
  return Math.abs(times - multiple * of) <= Math.min(SHOULDER * multiple, 0.15 * of);
}
