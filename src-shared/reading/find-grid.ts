/**
 * How many columns and rows a straightened chart has.
 *
 * Its edges (edges.ts) come back with every cell, so the count stands out in
 * their spectrum (spectrum.ts), nearly always as the strongest peak. Two
 * things may be stronger. Twice the count is, where marks put an edge in the
 * middle of each cell; then the count itself is the only other peak below.
 * And where a motif without lines repeats, parts of the count are, if cells
 * are so small that blur weakens what comes back with each of them. Last, no
 * chart has cells three times as tall as wide: where the two counts say so,
 * one of them is a part or a multiple of the truth.
 */
import { edgeShares, type Direction } from './edges.ts';
import type { Picture } from './picture.ts';
import { phaseAround } from './drift.ts';
import { peaksOf, type Peak } from './spectrum.ts';
import type { Steps } from './steps.ts';

/** A proposed number of columns or rows. */
export interface CountProposal {
  readonly count: number;
  /** 0 … 1: how far it stands out from every other count; below one half a person should count again. */
  readonly confidence: number;
}

export interface GridProposal {
  /** Null where no even spacing was found. */
  readonly columns: CountProposal | null;
  readonly rows: CountProposal | null;
}

/** A cell narrower than this many pixels cannot be told from its lines. */
export const LEAST_CELL_PIXELS = 4;

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
const SHOULDER = 2.5;

/** Cells narrower than this many pixels come back more weakly than larger parts of a motif, by blur alone. */
const BLURRED_CELL_PIXELS = 10.5;

/** Nearer above a count than this lie the mirror images of what its motif repeats. */
const BLURRED_FROM = 1.6;

/** Height of a cell for a width of 1: knitted, square, and some way beyond. */
const LEAST_ASPECT = 0.4;
const MOST_ASPECT = 1.8;

/** Share of the confidence that is left where the two counts do not bear each other out. */
const DOUBTED = 0.4;

/** Outermost edges further than this from the ends of the chart, in cells, may be one too few or too many. */
const LEAST_DOUBTED_MISFIT = 0.25;

/** Windows that the chart is cut into; as many again overlap them by half. */
const WINDOWS = 4;

/** The proposal for a straightened chart, whose outermost lines are its border. */
export function* findGrid(straight: Picture): Steps<GridProposal> {
  const columns = candidates(straight, 'across');
  yield { stage: 'find-grid', done: 0.5 };
  const rows = candidates(straight, 'up');
  yield { stage: 'find-grid', done: 1 };
  // One direction alone is worth less: nothing confirms it.
  if (columns === null || rows === null) return { columns: doubted(columns), rows: doubted(rows) };
  return inProportion(columns, rows) ?? { columns: proposal(columns), rows: proposal(rows) };
}

/** What the edges in one direction say. */
interface Candidates {
  readonly edges: readonly Float64Array[];
  readonly length: number;
  readonly peaks: readonly Peak[];
  readonly chosen: Peak;
}

/** Null where nothing comes back evenly. */
function candidates(straight: Picture, direction: Direction): Candidates | null {
  const edges = edgeShares(straight, direction);
  const length = (edges[0] as Float64Array).length;
  const most = Math.floor(length / LEAST_CELL_PIXELS);
  if (most <= LEAST_COUNT) return null;
  const all = peaksOf(edges, SPECTRUM_FROM, most).map((peak) => {
    const misfit = length / peak.times < RESOLVED_CELL_PIXELS ? 0 : endMisfit(edges, peak.times);
    return misfit > MOST_END_MISFIT ? { ...peak, strength: peak.strength * OFF_ENDS } : peak;
  });
  const peaks = all.filter((peak) => peak.times >= LEAST_COUNT - 0.5 && standsOut(peak, all));
  const strongest = strongestOf(peaks);
  if (strongest === null) return null;
  const best = bestOf(peaks, strongest);
  return { edges, length, peaks, chosen: halfOf(best, all) ?? blurredOf(best, peaks, length) ?? best };
}

/** By itself, or less but together with twice and three times as many: a few large cells without lines. */
function standsOut({ times, height }: Peak, all: readonly Peak[]): boolean {
  if (height >= STANDS_OUT) return true;
  return [1, 2, 3].every((multiple) =>
    all.some((peak) => peak.height >= STANDS_OUT_TOGETHER && Math.abs(peak.times - multiple * times) <= 0.4 * multiple),
  );
}

function strongestOf(peaks: readonly Peak[]): Peak | null {
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

function isMultiple(times: number, of: number): boolean {
  const multiple = Math.round(times / of);
  return Math.abs(times - multiple * of) <= Math.min(SHOULDER * multiple, 0.15 * of);
}

function proposal(found: Candidates | null): CountProposal | null {
  if (found === null) return null;
  const { count, misfit } = countAtEnds(found.edges, found.chosen.times);
  const confidence = confidenceOf(found.chosen, found.peaks);
  return { count, confidence: misfit > LEAST_DOUBTED_MISFIT ? confidence * DOUBTED : confidence };
}

function doubted(found: Candidates | null): CountProposal | null {
  const proposed = proposal(found);
  return proposed && { ...proposed, confidence: proposed.confidence * DOUBTED };
}

/** How well another peak stands in for the chosen one; that a part of the count was chosen is the likelier mistake. */
function shareKept(peak: Peak, chosen: Peak): number {
  return (peak.strength / chosen.strength) * Math.min(1, peak.times / chosen.times);
}

/**
 * Null where the two chosen peaks make cells of a likely shape. Else the
 * strongest pair that does, or if there is none the chosen two, both doubted.
 */
function inProportion(columns: Candidates, rows: Candidates): GridProposal | null {
  const isLikely = (across: Peak, up: Peak): boolean => {
    const aspect = rows.length / up.times / (columns.length / across.times);
    return aspect >= LEAST_ASPECT && aspect <= MOST_ASPECT;
  };
  if (isLikely(columns.chosen, rows.chosen)) return null;
  let best: [Peak, Peak] | null = null;
  let most = 0;
  for (const across of columns.peaks) {
    for (const up of rows.peaks) {
      const strength = shareKept(across, columns.chosen) * shareKept(up, rows.chosen);
      // One of the two was right: the other alone is changed.
      const keepsOne = across === columns.chosen || up === rows.chosen;
      if (keepsOne && strength > most && isLikely(across, up)) {
        most = strength;
        best = [across, up];
      }
    }
  }
  const [across, up] = best ?? [columns.chosen, rows.chosen];
  return { columns: doubted({ ...columns, chosen: across }), rows: doubted({ ...rows, chosen: up }) };
}

/** Falls as something else, neither a multiple nor a shoulder, comes as strong; and where the peak itself is low. */
function confidenceOf(peak: Peak, peaks: readonly Peak[]): number {
  const others = peaks.filter(
    ({ times }) => Math.abs(times - peak.times) > SHOULDER && !(times > peak.times && isMultiple(times, peak.times)),
  );
  const rival = (strongestOf(others)?.strength ?? 0) / peak.strength;
  return Math.max(0, Math.min(1, 1.5 * (1 - rival))) * Math.min(1, (peak.height - 1) / 5);
}

/** How far from the two ends the nearest edges lie that come back `times` times: the mean, in cells, 0 … ½. */
function endMisfit(edges: readonly Float64Array[], times: number): number {
  const { first, last } = endsOf(edges, times);
  return (Math.abs(first - Math.round(first)) + Math.abs(last - Math.round(last))) / 2;
}

/**
 * The whole number of cells whose outermost edges lie nearest to the two ends
 * of the chart. With corners set a third of a cell inside at both ends the
 * edges come back a good half too few times, and only their place tells.
 */
function countAtEnds(edges: readonly Float64Array[], times: number): { count: number; misfit: number } {
  const { first, last } = endsOf(edges, times);
  let best = { count: Math.round(times), misfit: Infinity };
  let leastCost = Infinity;
  for (const from of [Math.floor(first), Math.ceil(first)]) {
    for (const to of [Math.floor(last), Math.ceil(last)]) {
      const misfit = (Math.abs(from - first) + Math.abs(to - last)) / 2;
      const cost = 2 * misfit + 0.3 * Math.abs(to - from - (last - first));
      if (cost < leastCost) {
        leastCost = cost;
        best = { count: to - from, misfit };
      }
    }
  }
  return best;
}

/**
 * Counting edges from some one on: the number at which the chart begins and
 * the one at which it ends, whole where there is an edge. Followed from window
 * to window, since through a lens that bulges cells are wider in the middle.
 */
function endsOf(edges: readonly Float64Array[], times: number): { first: number; last: number } {
  const length = (edges[0] as Float64Array).length;
  const width = length / WINDOWS;
  let before = 0;
  const phases: number[] = [];
  for (let window = 0; window < 2 * WINDOWS - 1; window++) {
    let { phase } = phaseAround(edges, times, ((window + 1) * width) / 2, width);
    if (window > 0) phase += Math.round(before - phase);
    phases.push(phase);
    before = phase;
  }
  // The outermost windows' middles lie half a window inside; their lean is carried on to the ends.
  const [a, b] = [phases[0] as number, phases[1] as number];
  const [y, z] = [phases.at(-2) as number, phases.at(-1) as number];
  return { first: -(a + (a - b)), last: times - (z + (z - y)) };
}
