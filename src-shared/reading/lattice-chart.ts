/** What a lattice that was followed over a photo is a chart of: its counts, its corners, and what speaks against it. */
import { beyondOf, type Beyond } from './beyond-bounds.ts';
import { sidesOf, type Bounds, type CellSides } from './cell-sides.ts';
import { boundsOf, type ChartBounds } from './chart-bounds.ts';
import { cornerFault, type Corners, type Point } from './corners.ts';
import { withDrawnCells } from './drawn-cells.ts';
import { drawnPart } from './drawn-part.ts';
import type { Lattice } from './follow-lattice.ts';
import { SPACING, type Anchor } from './lattice.ts';
import { modelOf, type LatticeModel } from './lattice-model.ts';
import { typicalOf } from './line-strengths.ts';
import { outlineOn } from './outline.ts';
import type { Picture } from './picture.ts';
import type { PhotoSide } from './problems.ts';
import { cardOn } from './punched-card.ts';
import { tableOf } from './sheet-table.ts';

/**
 * Why a chart that was found may not be the one that is meant. `no-lines`: the
 * outermost cells that are filled are taken for its border. `lines-go-on`: the
 * paper is squared to its edge, and what is drawn on is taken. `outlined`: it is
 * so, and an outline that is drawn on it is taken. `empty-strip`: it
 * may be two charts with nothing between. `unclear`:
 * lines are too faint to be sure of the outermost. `bent`: the sheet is bent
 * more than could be followed.
 */
export type ChartDoubt = 'no-lines' | 'lines-go-on' | 'outlined' | 'empty-strip' | 'unclear' | 'bent';

export interface FoundChart {
  /** As the photo is seen upright: which way up the chart was drawn is not told. */
  readonly corners: Corners;
  readonly columns: number;
  readonly rows: number;
  readonly sure: boolean;
  /** What speaks against it; nothing where it is sure. */
  readonly why: readonly ChartDoubt[];
}

/** A chart has at least so many cells each way. */
const LEAST_COUNT = 5;

/** Cells looked at beyond the crossings that were seen. */
const BEYOND = 5;

/** Lines darker than their surroundings by less than this, of three times 256, or than so many times what chance makes, are none. */
const LEAST_LINE = 8;
const ABOVE_CHANCE = 2;

/** Lines must stand out from chance by this much to be sure of the outermost. */
const CLEARLY = 3.5;

/** Crossings lie off the smooth lattice by at most this, in cells. */
const MOST_MISFIT = 0.1;

/** A lattice with what is seen of its cells. */
export interface Looked extends Lattice {
  readonly model: LatticeModel;
  readonly core: Bounds;
  readonly sides: CellSides;
  readonly typical: number;
  readonly table: Uint8Array;
  /** Where its lines end; null where it has none. */
  readonly lined: ChartBounds | null;
}

/** What a lattice without lines is worth by its cells alone, in terms of how dark lines are. */
const WITHOUT_LINES = 8;

/**
 * One with lines that makes less than this share clear of what another does is
 * a row of holes, or of figures, or goes aslant through one of them; unless it
 * reaches over this share of where one without lines does, which signs in its
 * cells make clearer than lines do.
 */
const LEAST_LINED = 0.25;
const LEAST_REACHED = 0.5;

/**
 * The likeliest first. One with lines is as likely as these are long and dark:
 * every fifth line alone, being thicker, is less together; and so are marks
 * that a lattice laid aslant meets with. One without is likely by how much of
 * the picture it makes clear, and if it is laid aslant across holes or signs
 * it is finer; but that is a small part of what lines would make of the same
 * place. Of one half as wide as the cells every other line is missing.
 */
export function likeliestFirst(lattices: readonly Looked[]): Looked[] {
  const bare = lattices.filter(({ lined }) => lined === null).sort((one, other) => bareWorth(other) - bareWorth(one));
  const [barest] = bare;
  const leastAmongLined =
    LEAST_LINED * lattices.reduce((most, { lined, worth }) => Math.max(most, lined ? worth : 0), 0);
  const isOfChart = (lattice: Looked, lined: Bounds): boolean => {
    if (lattice.worth < leastAmongLined) return false;
    if (barest === undefined || lattice.worth >= LEAST_LINED * barest.worth) return true;
    return areaOf(lined) * stepOf(lattice) ** 2 >= LEAST_REACHED * reachOf(barest);
  };
  const likelihood = (lattice: Looked): number => {
    if (lattice.lined && isOfChart(lattice, lattice.lined)) {
      return (
        lattice.lined.worth *
        stepOf(lattice) *
        lattice.typical *
        shareSeen(lattice.sides, lattice.lined, lattice.typical) ** 2
      );
    }
    const rank = bare.indexOf(lattice);
    return rank === 0 ? (lattice.worth / stepOf(lattice)) * WITHOUT_LINES : -rank;
  };
  return [...lattices].sort((one, other) => likelihood(other) - likelihood(one));
}

/** A side that shows this share of what lines usually show has one. */
const LINE_SHARE = 0.35;

/** The share of sides, of those beside cells that are not filled, that show a line. */
function shareSeen({ columns, within, upright, level, filled }: CellSides, bounds: Bounds, typical: number): number {
  let [told, seen] = [0, 0];
  for (let row = bounds.top - within.top; row < bounds.bottom - within.top; row++) {
    for (let column = bounds.left - within.left; column < bounds.right - within.left; column++) {
      const cell = row * columns + column;
      if (filled[cell] === 1) continue;
      told += 2;
      if ((upright[row * (columns + 1) + column] as number) >= LINE_SHARE * typical) seen++;
      if ((level[cell] as number) >= LINE_SHARE * typical) seen++;
    }
  }
  return told === 0 ? 1 : seen / told;
}

function bareWorth(lattice: Looked): number {
  return lattice.worth * (lattice.typical + WITHOUT_LINES) * stepOf(lattice) ** 2 * Math.sqrt(lattice.score);
}

function areaOf({ left, right, top, bottom }: Bounds): number {
  return (right - left) * (bottom - top);
}

/** Over how much of the photo crossings were seen, in pixels of the photo. */
function reachOf(lattice: Looked): number {
  return lattice.anchors.length * (SPACING * stepOf(lattice)) ** 2;
}

/** A side of a cell, in pixels of the photo. */
function stepOf({ anchors, scale }: Looked): number {
  const area = anchors.reduce((sum, { across, down }) => sum + Math.abs(across.x * down.y - across.y * down.x), 0);
  return scale * Math.sqrt(area / anchors.length);
}

export function lookedAt(lattice: Lattice): Looked {
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
  const table = tableOf(sides, core, typical);
  const lined = hasLines ? boundsOf(sides, core, typical, table) : null;
  return { ...lattice, model, core, sides, typical, table, lined };
}

/** Of a lattice's sides so many go on, for its lines to be taken for those of squared paper. */
const LEAST_OPEN = 2;

/** In the order of {@link beyondOf}. */
const SIDES = ['left', 'right', 'top', 'bottom'] as const;

/** The sides of the photo beyond which a chart goes on. */
export interface CutOff {
  readonly cutOff: readonly PhotoSide[];
}

function cutOff(beyond: readonly Beyond[]): readonly PhotoSide[] {
  return SIDES.filter((_, i) => beyond[i] === 'lines-to-photo');
}

/** What a lattice is a chart of; null if of none. */
export function chartOn({
  picture,
  scale,
  model: lines,
  core,
  sides,
  typical,
  table,
  lined,
}: Looked): FoundChart | CutOff | null {
  const why: ChartDoubt[] = [];
  let bounds: Bounds | null;
  let model = lines;
  if (lined) {
    const beyond = beyondOf(picture, model, sides, lined, typical);
    const goesOn = beyond.filter((side) => side !== 'paper').length;
    if (goesOn < beyond.length && beyond.includes('lines-to-photo')) return { cutOff: cutOff(beyond) };
    if (lined.hasStrip) why.push('empty-strip');
    if (goesOn >= LEAST_OPEN) {
      const drawn = withDrawnCells(picture, model, sides, table);
      const outline = outlineOn(sides, table, lined, typical);
      const isOutlined = outline !== null && isAround(outline, drawn);
      why.push(isOutlined ? 'outlined' : 'lines-go-on');
      bounds = (isOutlined ? outline : drawnPart(drawn, table, lined)) ?? lined;
    } else {
      if (!lined.isClear || typical < CLEARLY * sides.chance) why.push('unclear');
      bounds = lined;
    }
  } else {
    const card = cardOn(picture, model, core);
    if (card) {
      ({ bounds, model } = card);
      if (!card.isWhole) why.push('unclear');
    } else {
      why.push('no-lines');
      bounds = drawnPart(sides, table, sides.within);
    }
  }
  if (model.misfit > MOST_MISFIT) why.push('bent');
  if (bounds === null) return null;
  const [columns, rows] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
  if (columns < LEAST_COUNT || rows < LEAST_COUNT) return null;
  const corners = cornersOf(model, bounds, picture, scale);
  if (cornerFault(corners) !== null) return null;
  return { corners, columns, rows, sure: why.length === 0, why };
}

/** An outline is drawn around this share at least of what is drawn into cells; the rest may be a legend. */
const MOSTLY_IN = 0.8;

function isAround({ left, right, top, bottom }: Bounds, { columns, within, filled, isEven }: CellSides): boolean {
  let [all, those] = [0, 0];
  filled.forEach((is, cell) => {
    if (is === 0 || isEven[cell] === 0) return;
    const [column, row] = [(cell % columns) + within.left, Math.floor(cell / columns) + within.top];
    all++;
    if (column >= left && column < right && row >= top && row < bottom) those++;
  });
  return those >= MOSTLY_IN * all;
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
export function cornersOf(
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
