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
import { sidesOf, type Bounds } from './cell-sides.ts';
import { boundsOf, typicalOf } from './chart-bounds.ts';
import { cornerFault, type Corners, type Point } from './corners.ts';
import { drawnPart } from './drawn-part.ts';
import { grown, type Anchor } from './lattice.ts';
import { modelOf, type LatticeModel } from './lattice-model.ts';
import { seedsOf, type Seed } from './lattice-seed.ts';
import type { Photo } from './photo.ts';
import type { Picture } from './picture.ts';
import type { PhotoSide } from './problems.ts';
import { tableOf } from './sheet-table.ts';
import type { Steps } from './steps.ts';

/**
 * Why a chart that was found may not be the one that is meant. `no-lines`: the
 * outermost cells that are filled are taken for its border. `lines-go-on`: the
 * paper is squared to its edge, and what is drawn on is taken. `unclear`:
 * lines are too faint to be sure of the outermost. `bent`: the sheet is bent
 * more than could be followed.
 */
export type ChartDoubt = 'no-lines' | 'lines-go-on' | 'unclear' | 'bent';

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

/** Seeds that are followed, and of these how many that lead somewhere. */
const MOST_FOLLOWED = 14;
const ENOUGH_FOLLOWED = 3;

/** Crossings that a lattice has at least. */
const LEAST_ANCHORS = 6;

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
 * The charts of a photo, the largest first. Throws `chart-not-found` where
 * there is none, and `chart-cut-off` where one goes on beyond the photo's edge.
 */
export function* findCharts(photo: Photo): Steps<readonly FoundChart[]> {
  const [full] = photo.levels as [Picture];
  if (Math.min(full.width, full.height) < LEAST_SIDE) {
    throw problemError('chart-not-found', { why: 'too-small', width: full.width, height: full.height });
  }
  const seeds: { seed: Seed; level: number }[] = [];
  for (const [level, picture] of photo.levels.entries()) {
    const side = Math.max(picture.width, picture.height);
    if (side > MOST_SIDE || Math.min(picture.width, picture.height) < LEAST_SIDE) continue;
    for (const seed of seedsOf(picture)) seeds.push({ seed, level });
    yield { stage: 'find-chart', done: 0.4 };
  }
  seeds.sort((a, b) => b.seed.score - a.seed.score);
  const lattices: { picture: Picture; scale: number; anchors: Anchor[]; worth: number }[] = [];
  for (const { seed, level } of seeds.slice(0, MOST_FOLLOWED)) {
    const picture = photo.levels[level] as Picture;
    const anchors = grown(picture, seed);
    yield { stage: 'find-chart', done: 0.5 };
    if (anchors.length < LEAST_ANCHORS) continue;
    const worth = anchors.reduce((sum, { clarity }) => sum + clarity - 0.35, 0);
    lattices.push({ picture, scale: 2 ** level, anchors, worth });
    if (lattices.length === ENOUGH_FOLLOWED) break;
  }
  const best = lattices.sort((a, b) => b.worth - a.worth)[0];
  const chart = best && chartOn(best.picture, best.anchors, best.scale);
  yield { stage: 'find-chart', done: 1 };
  if (!chart) throw problemError('chart-not-found', { why: 'no-cells', width: full.width, height: full.height });
  return [chart];
}

/** Of a lattice's sides so many go on, for its lines to be taken for those of squared paper. */
const LEAST_OPEN = 2;

/** In the order of {@link beyondOf}. */
const SIDES = ['left', 'right', 'top', 'bottom'] as const;

function cutOff(beyond: readonly Beyond[]): readonly PhotoSide[] {
  return SIDES.filter((_, i) => beyond[i] === 'lines-to-photo');
}

/** What a lattice is a chart of; null if of none. */
function chartOn(picture: Picture, anchors: readonly Anchor[], scale: number): FoundChart | null {
  const model = modelOf(anchors);
  const core = coreOf(anchors);
  const within = {
    left: core.left - BEYOND,
    right: core.right + BEYOND,
    top: core.top - BEYOND,
    bottom: core.bottom + BEYOND,
  };
  const sides = sidesOf(picture, model, within);
  const typical = typicalOf(sides, core);
  const table = tableOf(sides, core, typical);
  const why: ChartDoubt[] = [];
  const hasLines = typical >= Math.max(LEAST_LINE, ABOVE_CHANCE * sides.chance);
  let bounds: Bounds | null;
  if (hasLines) {
    const lined = boundsOf(sides, core, typical, table);
    const beyond = beyondOf(picture, model, sides, table, lined, typical);
    const goesOn = beyond.filter((side) => side !== 'paper').length;
    if (goesOn < beyond.length && beyond.includes('lines-to-photo'))
      throw problemError('chart-cut-off', { sides: cutOff(beyond) });
    if (goesOn >= LEAST_OPEN) why.push('lines-go-on');
    else if (!lined.isClear || typical < CLEARLY * sides.chance) why.push('unclear');
    bounds = goesOn >= LEAST_OPEN ? drawnPart(sides, table, lined) : lined;
  } else {
    why.push('no-lines');
    bounds = drawnPart(sides, table, within);
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
