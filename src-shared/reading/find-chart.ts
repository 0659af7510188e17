/**
 * Charts found in a photo: their four corners and their counts, with nothing
 * said about either.
 *
 * What makes a chart is cells that come back evenly in two directions. Where
 * that is seen best it begins (lattice-seed.ts); from there the lattice is
 * followed outwards (lattice.ts), laid smoothly through what was seen
 * (lattice-model.ts), and cut where its lines end (chart-bounds.ts) or, where
 * they do not say, where nothing is drawn any more (drawn-part.ts). What was
 * taken for the chart is a proposal, with what speaks against it.
 */
import { problemError } from '../problem/index.ts';
import { sideLengths, type Corners, type Point } from './corners.ts';
import { areCellsFaint } from './faint-cells.ts';
import { followed, hypothesesOf, isLookedOver, LEAST_SIDE, type PlacedSeed } from './follow-lattice.ts';
import { chartOn, likeliestFirst, lookedAt, type FoundChart, type Looked } from './lattice-chart.ts';
import { seedsOf } from './lattice-seed.ts';
import { whyNoChart } from './no-chart.ts';
import type { Photo } from './photo.ts';
import type { Picture } from './picture.ts';
import type { Steps } from './steps.ts';

/** Of different steps so many lattices are followed; the one that makes most of the picture clear is the chart's. */
const ENOUGH_FOLLOWED = 3;

/** A second chart is seen this well, and at least this share as large. */
const SECOND_SCORE = 12;
const SECOND_SHARE = 0.15;

/**
 * The charts of a photo: one, or the two that it shows, the clearer first. Throws `chart-not-found` where
 * there is none, and `chart-cut-off` where one goes on beyond the photo's edge.
 */
export function* findCharts(photo: Photo): Steps<readonly FoundChart[]> {
  const [full] = photo.levels as [Picture];
  if (Math.min(full.width, full.height) < LEAST_SIDE) {
    throw problemError('chart-not-found', { why: 'too-small', width: full.width, height: full.height });
  }
  const seeds: PlacedSeed[] = [];
  for (const [level, picture] of photo.levels.entries()) {
    if (!isLookedOver(picture)) continue;
    for (const seed of seedsOf(picture)) seeds.push({ seed, level });
    yield { stage: 'find-chart', done: 0.4 };
  }
  const chart = chartAmong(yield* likeliest(photo, seeds, () => true));
  if (!chart) {
    const why = whyNoChart(full);
    const isFaint = why === 'no-cells' && areCellsFaint(photo);
    throw problemError('chart-not-found', {
      why: isFaint ? 'too-faint' : why,
      width: full.width,
      height: full.height,
    });
  }
  const charts = [chart];
  // Another one beside it; what is neither clear nor large is a legend or writing.
  const isFree = (at: Point): boolean => charts.every(({ corners }) => !isInside(at, corners));
  const others = seeds.filter(
    ({ seed: { at, score }, level }) => score >= SECOND_SCORE && isFree({ x: at.x * 2 ** level, y: at.y * 2 ** level }),
  );
  const beside = besideAmong(yield* likeliest(photo, others, isFree));
  if (
    beside?.sure &&
    isFree(middleOf(beside.corners)) &&
    areaOf(beside.corners) > SECOND_SHARE * areaOf(chart.corners)
  ) {
    charts.push(beside);
  }
  yield { stage: 'find-chart', done: 1 };
  return charts;
}

/** Lattices of what is free of the photo, the likeliest first. */
function* likeliest(
  photo: Photo,
  seeds: readonly PlacedSeed[],
  isFree: (at: Point) => boolean,
): Steps<readonly Looked[]> {
  const looked: Looked[] = [];
  for (const hypothesis of hypothesesOf(seeds)) {
    const lattice = followed(photo, hypothesis, isFree);
    yield { stage: 'find-chart', done: 0.5 };
    if (lattice !== null) looked.push(lookedAt(lattice));
    if (looked.length === ENOUGH_FOLLOWED) break;
  }
  return likeliestFirst(looked);
}

/**
 * The chart of the first lattice that is one of a chart; if that is in doubt, a card that is seen whole, with a
 * feed hole at both ends of each row, comes before it. Throws `chart-cut-off` where that is cut off.
 */
export function chartAmong(lattices: readonly Looked[]): FoundChart | null {
  for (const [i, lattice] of lattices.entries()) {
    const chart = chartOn(lattice);
    if (chart === null) continue;
    const card = 'sure' in chart && chart.sure ? null : cardAmong(lattices.slice(i + 1));
    if (card !== null) return card;
    if ('cutOff' in chart) throw problemError('chart-cut-off', { sides: chart.cutOff });
    return chart;
  }
  return null;
}

/** Without lines, only of a whole card it is sure where it ends. */
function cardAmong(lattices: readonly Looked[]): FoundChart | null {
  for (const lattice of lattices) {
    const chart = lattice.lined === null ? chartOn(lattice) : null;
    if (chart !== null && 'sure' in chart && chart.sure) return chart;
  }
  return null;
}

/** The chart of the first lattice that has lines and all of its sides. */
function besideAmong(lattices: readonly Looked[]): FoundChart | null {
  for (const lattice of lattices) {
    const chart = lattice.lined ? chartOn(lattice) : null;
    if (chart !== null && !('cutOff' in chart)) return chart;
  }
  return null;
}

/** Whether a place lies within the corners. */
function isInside({ x, y }: Point, corners: Corners): boolean {
  return corners.every((corner, i) => {
    const next = corners[(i + 1) % 4] as Point;
    return (next.x - corner.x) * (y - corner.y) - (next.y - corner.y) * (x - corner.x) >= 0;
  });
}

function middleOf(corners: Corners): Point {
  const [one, , other] = corners;
  return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 };
}

function areaOf(corners: Corners): number {
  const { across, up } = sideLengths(corners);
  return across * up;
}
