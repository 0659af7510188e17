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
import { beyondOf, type Beyond } from './beyond-bounds.ts';
import { sidesOf, type Bounds, type CellSides } from './cell-sides.ts';
import { boundsOf, typicalOf } from './chart-bounds.ts';
import { cornerFault, sideLengths, type Corners, type Point } from './corners.ts';
import { drawnPart } from './drawn-part.ts';
import { followed, hypothesesOf, type Lattice, type PlacedSeed } from './follow-lattice.ts';
import type { Anchor } from './lattice.ts';
import { modelOf, type LatticeModel } from './lattice-model.ts';
import { seedsOf } from './lattice-seed.ts';
import type { Photo } from './photo.ts';
import type { Picture } from './picture.ts';
import type { PhotoSide } from './problems.ts';
import { tableOf } from './sheet-table.ts';
import type { Steps } from './steps.ts';

/**
 * Why a chart that was found may not be the one that is meant. `no-lines`: the
 * outermost cells that are filled are taken for its border. `lines-go-on`: the
 * paper is squared to its edge, and what is drawn on is taken. `empty-strip`: it
 * may be two charts with nothing between. `unclear`:
 * lines are too faint to be sure of the outermost. `bent`: the sheet is bent
 * more than could be followed.
 */
export type ChartDoubt = 'no-lines' | 'lines-go-on' | 'empty-strip' | 'unclear' | 'bent';

export interface FoundChart {
  /** As the photo is seen upright: which way up the chart was drawn is not told. */
  readonly corners: Corners;
  readonly columns: number;
  readonly rows: number;
  readonly sure: boolean;
  /** What speaks against it; nothing where it is sure. */
  readonly why: readonly ChartDoubt[];
}

/** A picture smaller than this, in pixels, holds no chart that can be read. */
const LEAST_SIDE = 100;

/** Pictures this large are looked over: cells of very fine charts are still five pixels wide. */
const MOST_SIDE = 1700;

/** A chart has at least so many cells each way. */
const LEAST_COUNT = 5;

/** Of different steps so many lattices are followed; the one that makes most of the picture clear is the chart's. */
const ENOUGH_FOLLOWED = 3;

/** A second chart is seen this well, and at least this share as large. */
const SECOND_SCORE = 12;
const SECOND_SHARE = 0.15;

/** Cells looked at beyond the crossings that were seen. */
const BEYOND = 5;

/** Lines darker than their surroundings by less than this, of three times 256, or than so many times what chance makes, are none. */
const LEAST_LINE = 8;
const ABOVE_CHANCE = 2;

/** Lines must stand out from chance by this much to be sure of the outermost. */
const CLEARLY = 3.5;

/** Crossings lie off the smooth lattice by at most this, in cells. */
const MOST_MISFIT = 0.1;

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
    const side = Math.max(picture.width, picture.height);
    if (side > MOST_SIDE || Math.min(picture.width, picture.height) < LEAST_SIDE) continue;
    for (const seed of seedsOf(picture)) seeds.push({ seed, level });
    yield { stage: 'find-chart', done: 0.4 };
  }
  const chart = chartAmong(yield* likeliest(photo, seeds, () => true));
  if (!chart) throw problemError('chart-not-found', { why: 'no-cells', width: full.width, height: full.height });
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

/** A lattice with what is seen of its cells. */
interface Looked extends Lattice {
  readonly model: LatticeModel;
  readonly core: Bounds;
  readonly sides: CellSides;
  readonly typical: number;
  readonly hasLines: boolean;
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
  return looked.sort((one, other) => likelihoodOf(other) - likelihoodOf(one));
}

/** The chart of the first lattice that is one of a chart. Throws `chart-cut-off` where that is cut off. */
function chartAmong(lattices: readonly Looked[]): FoundChart | null {
  for (const lattice of lattices) {
    const chart = chartOn(lattice);
    if (chart === null) continue;
    if ('cutOff' in chart) throw problemError('chart-cut-off', { sides: chart.cutOff });
    return chart;
  }
  return null;
}

/** The chart of the first lattice that has lines and all of its sides. */
function besideAmong(lattices: readonly Looked[]): FoundChart | null {
  for (const lattice of lattices) {
    const chart = lattice.hasLines ? chartOn(lattice) : null;
    if (chart !== null && !('cutOff' in chart)) return chart;
  }
  return null;
}

/** What a lattice without lines is worth by its cells alone, in terms of how dark lines are. */
const WITHOUT_LINES = 8;

/**
 * How likely it is that a lattice is the chart's. One laid aslant across the
 * signs in the cells, or the holes of a card, comes back as evenly, and more
 * finely; but along its own lines there is nothing.
 */
function likelihoodOf({ worth, anchors, scale, typical }: Looked): number {
  const area = anchors.reduce((sum, { across, down }) => sum + Math.abs(across.x * down.y - across.y * down.x), 0);
  return worth * (typical + WITHOUT_LINES) * (area / anchors.length) * scale * scale;
}

function lookedAt(lattice: Lattice): Looked {
  const model = modelOf(lattice.anchors);
  const core = coreOf(lattice.anchors);
  const sides = sidesOf(lattice.picture, model, {
    left: core.left - BEYOND,
    right: core.right + BEYOND,
    top: core.top - BEYOND,
    bottom: core.bottom + BEYOND,
  });
  const typical = typicalOf(sides, core);
  const hasLines = typical >= Math.max(LEAST_LINE, ABOVE_CHANCE * sides.chance);
  return { ...lattice, model, core, sides, typical, hasLines };
}

/** Of a lattice's sides so many go on, for its lines to be taken for those of squared paper. */
const LEAST_OPEN = 2;

/** In the order of {@link beyondOf}. */
const SIDES = ['left', 'right', 'top', 'bottom'] as const;

/** The sides of the photo beyond which a chart goes on. */
interface CutOff {
  readonly cutOff: readonly PhotoSide[];
}

function cutOff(beyond: readonly Beyond[]): readonly PhotoSide[] {
  return SIDES.filter((_, i) => beyond[i] === 'lines-to-photo');
}

/** What a lattice is a chart of; null if of none. */
function chartOn({ picture, scale, model, core, sides, typical, hasLines }: Looked): FoundChart | CutOff | null {
  const table = tableOf(sides, core, typical);
  const why: ChartDoubt[] = [];
  let bounds: Bounds | null;
  if (hasLines) {
    const lined = boundsOf(sides, core, typical, table);
    const beyond = beyondOf(picture, model, sides, lined, typical);
    const goesOn = beyond.filter((side) => side !== 'paper').length;
    if (goesOn < beyond.length && beyond.includes('lines-to-photo')) return { cutOff: cutOff(beyond) };
    if (lined.hasStrip) why.push('empty-strip');
    if (goesOn >= LEAST_OPEN) why.push('lines-go-on');
    else if (!lined.isClear || typical < CLEARLY * sides.chance) why.push('unclear');
    bounds = goesOn >= LEAST_OPEN ? drawnPart(sides, table, lined) : lined;
  } else {
    why.push('no-lines');
    bounds = drawnPart(sides, table, sides.within);
  }
  if (model.misfit > MOST_MISFIT) why.push('bent');
  if (bounds === null) return null;
  const [columns, rows] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
  if (columns < LEAST_COUNT || rows < LEAST_COUNT) return null;
  const corners = cornersOf(model, bounds, picture, scale);
  if (cornerFault(corners) !== null) return null;
  return { corners, columns, rows, sure: why.length === 0, why };
}

function coreOf(anchors: readonly Anchor[]): Bounds {
  const columns = anchors.map(({ column }) => column);
  const rows = anchors.map(({ row }) => row);
  return {
    left: Math.min(...columns),
    right: Math.max(...columns),
    top: Math.min(...rows),
    bottom: Math.max(...rows),
  };
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

/** In pixels of the photo, and on it. */
function cornersOf(
  model: LatticeModel,
  { left, right, top, bottom }: Bounds,
  picture: Picture,
  scale: number,
): Corners {
  const at = (column: number, row: number): Point => {
    const { x, y } = model.at(column, row);
    return {
      x: scale * Math.max(0, Math.min(picture.width, x)),
      y: scale * Math.max(0, Math.min(picture.height, y)),
    };
  };
  return [at(left, top), at(right, top), at(right, bottom), at(left, bottom)];
}
