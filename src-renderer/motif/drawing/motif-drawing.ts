/** The layers of the chart: cells as one bitmap, and above them what stands around them and what the pointer is on. */
import { isInside, type Cell, type CellBox, type Copies, type Grid } from '@shared/grid/index.ts';
import { runsOf, type Measure } from '@shared/motif/repeat/index.ts';
import {
  cellsLayer,
  drawDoubtMarks,
  isWithin,
  Viewport,
  type CellPicture,
  type ChartNode,
  type ChartLayer,
  type FabricSide,
  type Room,
} from '../../canvas/index.ts';
import type { Following } from '../editing/following.ts';
import type { Cutting } from '../editing/cutting.ts';
import { drawAxes } from './axes.ts';
import { drawCursor, drawHover } from './cursor.ts';
import type { MotifLook } from './look.ts';
import { drawBlank, drawMeasured, hasSameMarks } from './measured-marks.ts';
import { drawSelection } from './selection.ts';
import { COLUMN_NUMBERS, drawRowRuns, drawRulerMarks, drawRulers, ROW_NUMBERS } from './rulers.ts';

/** The chart, whatever the pointer and the keyboard are on. */
export interface MotifChart {
  readonly grid: Grid;
  /** `#rrggbb` of each yarn; null leaves its cells open. */
  readonly colours: readonly (string | null)[];
  readonly measure: Measure;
  /** Blank columns at the edges are hatched. */
  readonly isHatched: boolean;
  readonly following: Following;
  /** Cells that a reading left in doubt; the same while they are. */
  readonly doubts: readonly Cell[];
  /** Selected or lifted cells. */
  readonly marked: Cutting | null;
  /** How the copies around it lie, of which some columns and rows are shown; null: none are. */
  readonly neighbours: Copies | null;
  /** The side of the fabric that is shown instead of the chart, or null. */
  readonly fabric: FabricSide | null;
  /** It is seen from the other side than it was drawn from: left and right have changed places. */
  readonly isTurned: boolean;
  readonly look: MotifLook;
}

export interface MotifScene {
  readonly chart: MotifChart;
  /** The cells of the chart, by {@link pictureOf}. */
  readonly picture: CellPicture;
  /** The floats that are drawn on the fabric, or null. */
  readonly floats: DrawnFloats | null;
  /** What of the picture to trace is dragged, or null. The same while none of it changes. */
  readonly handles: ((view: Viewport) => readonly ChartNode[]) | null;
  /** The cells that the pointer and the keyboard are on. */
  readonly hover: Cell | null;
  readonly cursor: Cell | null;
}

/** The floats of a fabric, with how many are over the limit in one copy and how long the longest is, in stitches. */
export interface DrawnFloats {
  readonly over: number;
  readonly longest: number;
  draw(
    context: CanvasRenderingContext2D,
    view: Viewport,
    size: { readonly width: number; readonly height: number },
  ): void;
}

/** Columns and rows of neighbouring copies shown at each side. */
const NEIGHBOURS = { columns: 5, rows: 3, strength: 0.3 } as const;
const NO_NEIGHBOURS = { columns: 0, rows: 0 } as const;

/** Room for the caption above the chart. */
export const CAPTION = 56;
/** Paper left free around all that is shown. */
const MARGIN = 20;
/** A motif of a few cells is not blown up beyond this height of a cell. */
const MOST_FITTED_CELL = 48;

type MotifLayer = ChartLayer<Viewport, MotifScene>;

/** The layers of one stage. */
export function motifLayers(): readonly MotifLayer[] {
  const cells = cellsLayer<Viewport, MotifScene>({
    picture: ({ picture }) => picture,
    parts: (viewport, { chart: { grid } }) => [{ rows: { from: 0, to: grid.height }, viewport }],
    lines: ({ chart: { look } }) => look.lines,
    fabric: ({ chart: { fabric } }) => fabric,
  });
  return [cells, marksLayer, pointerLayer, handlesLayer];
}

const marksLayer: MotifLayer = {
  sharesCanvas: true,
  isKept: () => true,
  draw(context, view, { chart, floats }, { width, height }) {
    const { grid, measure, isHatched, following, marked, doubts, fabric, look } = chart;
    // What is marked on the chart is not on the fabric, and may be seen from its other side.
    if (fabric) {
      floats?.draw(context, view, { width, height });
      drawRulers(context, view, chart, look, width, height);
      return;
    }
    if (isHatched && measure.blank) drawBlank(context, view, grid, measure.blank, look, width, height);
    drawMeasured(context, view, grid, measure, look, width, height);
    drawAxes(context, view, grid, following, look, width, height);
    drawDoubtMarks(context, view, doubts, { mark: look.ink, casing: look.paper }, width, height);
    if (marked) drawSelection(context, view, marked, look);
    drawRulers(context, view, chart, look, width, height);
    drawRowRuns(context, view, grid, runsOf(measure.manyYarns), look, width, height);
  },
  // A stroke that leaves all that is marked alone redraws its own cells only.
  changed: (before, after) => before.floats !== after.floats || !isMarkedAlike(before.chart, after.chart),
};

const pointerLayer: MotifLayer = {
  sharesCanvas: true,
  isLight: true,
  draw(context, view, { chart, hover, cursor }, { width, height }) {
    const { look } = chart;
    // The rulers number the chart, not its copies.
    const marked = hover && isInside(chart.grid, hover.column, hover.row) ? hover : cursor;
    const drawn = marked ? drawRulerMarks(context, view, chart, marked, look, width, height) : [];
    if (hover) drawn.push(drawHover(context, view, hover, look));
    if (cursor) drawn.push(drawCursor(context, view, cursor, look));
    return drawn;
  },
  changed: (before, after) =>
    !isSameCell(before.hover, after.hover) ||
    !isSameCell(before.cursor, after.cursor) ||
    !isMarkedAlike(before.chart, after.chart),
  isBlank: ({ hover, cursor }) => !hover && !cursor,
};

/** Drawn by its nodes alone. */
const handlesLayer: MotifLayer = {
  draw: () => undefined,
  nodes: (view, { handles }) => handles?.(view) ?? [],
  changed: (before, after) => before.handles !== after.handles,
  isBlank: ({ handles }) => handles === null,
};

/** The whole motif with its neighbours, as large as it goes. */
export function fittedView(chart: MotifChart, aspect: number, width: number, height: number): Viewport {
  const area = shownArea(chart);
  const free = { width, height, left: MARGIN, right: MARGIN, top: CAPTION, bottom: MARGIN };
  const close = Viewport.fit(area, aspect, free, MOST_FITTED_CELL);
  // Numbers stand on the neighbours, or need room of their own where these are narrow.
  const right = MARGIN + (-area.column * close.cellWidth < ROW_NUMBERS ? ROW_NUMBERS : 0);
  const bottom = MARGIN + (-area.row * close.cellHeight < COLUMN_NUMBERS ? COLUMN_NUMBERS : 0);
  const fitted = Viewport.fit(area, aspect, { ...free, right, left: right, bottom }, MOST_FITTED_CELL);
  // Whole pixels make all rows the same height.
  if (fitted.cellHeight < 4) return fitted;
  const whole = Math.floor(fitted.cellHeight) / fitted.cellHeight;
  return fitted.zoomedAt(whole, width / 2, (CAPTION + height - bottom) / 2);
}

/** The free part of the view for a cell that must be seen. */
export function roomInView(width: number, height: number): Room {
  return { width, height, left: 8, right: ROW_NUMBERS + 8, top: 8, bottom: COLUMN_NUMBERS + 8 };
}

/** All cells that show, neighbours included. */
export function shownArea({ grid, neighbours }: Pick<MotifChart, 'grid' | 'neighbours'>): CellBox {
  const { columns, rows } = neighbours ? NEIGHBOURS : NO_NEIGHBOURS;
  return { column: -columns, row: -rows, width: grid.width + 2 * columns, height: grid.height + 2 * rows };
}

/** True in the copies that show around the chart. */
export function isInNeighbours(chart: Pick<MotifChart, 'grid' | 'neighbours'>, cell: Cell): boolean {
  const isOutside = !isInside(chart.grid, cell.column, cell.row);
  return isOutside && isWithin({ ...cell, width: 1, height: 1 }, shownArea(chart));
}

/** The cells of a chart, with its neighbours where they show. */
export function pictureOf({ grid, colours, neighbours, isTurned }: MotifChart): CellPicture {
  return { grid, colours, surround: neighbours && { copies: neighbours, isMirrored: isTurned, ...NEIGHBOURS } };
}

function isMarkedAlike(a: MotifChart, b: MotifChart): boolean {
  return (
    a === b ||
    (a.look === b.look &&
      a.fabric === b.fabric &&
      a.isTurned === b.isTurned &&
      a.following === b.following &&
      a.marked === b.marked &&
      a.doubts === b.doubts &&
      a.grid.width === b.grid.width &&
      a.grid.height === b.grid.height &&
      (a.isHatched === b.isHatched || !hasBlank(a.measure)) &&
      hasSameMarks(a.measure, b.measure))
  );
}

/** True if there are blank columns to hatch. */
function hasBlank({ blank }: Measure): boolean {
  return blank !== null && blank.left + blank.right > 0;
}

function isSameCell(a: Cell | null, b: Cell | null): boolean {
  return a?.column === b?.column && a?.row === b?.row;
}
