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
import { countAtEnds, meetsEnds } from './count-at-ends.ts';
import {
  aspectOf,
  candidates,
  hinted,
  isLikelyAspect,
  isMultiple,
  known,
  SHOULDER,
  strongestOf,
  type Candidates,
} from './count-candidates.ts';
import { cellsAlongSides } from './drift.ts';
import type { Picture } from './picture.ts';
import type { Peak } from './spectrum.ts';
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

/**
 * Cells are knitted wider than tall, by half at most; where they come out
 * flatter or taller than these one count may be twice the truth, by the two
 * sides of bars or of lines. Of signs these come back so much more strongly
 * than the cells that less of the cells is enough to say so.
 */
const LEAST_USUAL_ASPECT = 0.6;
const MOST_USUAL_ASPECT = 1.5;
const LEAST_HALF = 0.15;

/** Between two corners a whole number of cells lies, give or take this. */
const MOST_OFF_WHOLE = 0.25;

/** Share of the confidence that is left where the two counts do not bear each other out. */
const DOUBTED = 0.4;

/** Outermost edges further than this from the ends of the chart, in cells, may be one too few or too many. */
const LEAST_DOUBTED_MISFIT = 0.25;

/** The proposal for a straightened chart, whose outermost lines are its border. */
export function* findGrid(straight: Picture): Steps<GridProposal> {
  const across = candidates(straight, 'across');
  yield { stage: 'find-grid', done: 0.5 };
  const up = candidates(straight, 'up');
  yield { stage: 'find-grid', done: 1 };
  const [columns, rows] = [known(across), known(up)];
  // One direction alone is worth less: nothing confirms it.
  if (columns === null || rows === null) {
    return { columns: doubted(columns ?? hinted(across, rows)), rows: doubted(rows ?? hinted(up, columns)) };
  }
  return (
    inProportion(columns, rows) ??
    halved(straight, columns, rows) ?? {
      columns: proposal(straight, columns, rows),
      rows: proposal(straight, rows, columns),
    }
  );
}

/** With one of the counts halved, doubted, where cells come out flat or tall and would not then; else null. */
function halved(straight: Picture, columns: Candidates, rows: Candidates): GridProposal | null {
  const aspect = aspectOf(columns, columns.chosen, rows, rows.chosen);
  if (aspect >= LEAST_USUAL_ASPECT && aspect <= MOST_USUAL_ASPECT) return null;
  const doubled = aspect < LEAST_USUAL_ASPECT ? rows : columns;
  const hasHalf = doubled.peaks.some(
    ({ times, strength }) =>
      Math.abs(2 * times - doubled.chosen.times) <= 1 && strength >= LEAST_HALF * doubled.chosen.strength,
  );
  if (!hasHalf) return null;
  const twice = proposal(straight, doubled, doubled === rows ? columns : rows);
  const instead = { count: Math.round(twice.count / 2), confidence: twice.confidence * DOUBTED };
  return doubled === rows ? { columns: doubted(columns), rows: instead } : { columns: instead, rows: doubted(rows) };
}

/**
 * As the edges meet the ends; where they do not, or not all along a side, as
 * many as lie along the sides, where paper does not bulge. Doubted where
 * neither tells, or the two differ and the first seemed to tell.
 */
function proposal(straight: Picture, found: Candidates, other: Candidates): CountProposal {
  const { edges, chosen, direction } = found;
  const { count, misfit } = countAtEnds(edges, chosen.times);
  const confidence = confidenceOf(chosen, found.peaks);
  const isMet = misfit <= LEAST_DOUBTED_MISFIT;
  if (isMet && meetsEnds(edges, chosen.times, LEAST_DOUBTED_MISFIT)) {
    return { count, confidence };
  }
  const sides = cellsAlongSides(straight, direction, chosen.times, other.chosen.times);
  const whole = sides === null ? count : Math.round(sides[0]);
  const isWhole = sides?.every((cells) => Math.abs(cells - whole) <= MOST_OFF_WHOLE) ?? false;
  if (!isWhole) return { count, confidence: confidence * DOUBTED };
  return { count: whole, confidence: isMet && whole !== count ? confidence * DOUBTED : confidence };
}

function doubted(found: Candidates | null): CountProposal | null {
  if (found === null) return null;
  const { count } = countAtEnds(found.edges, found.chosen.times);
  return { count, confidence: confidenceOf(found.chosen, found.peaks) * DOUBTED };
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
  const isLikely = (across: Peak, up: Peak): boolean => isLikelyAspect(aspectOf(columns, across, rows, up));
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
