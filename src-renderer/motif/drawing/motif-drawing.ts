/**
 * The chart on the screen: cells as one bitmap, and on layers above it what
 * stands around them and what the pointer is on. Usable without Svelte.
 */
import Konva from 'konva/lib/Core.js';
import type { Cell, CellBox, Grid } from '@shared/grid/index.ts';
import { runsOf, type Measure } from '@shared/motif/repeat/index.ts';
import {
  createCellStage,
  Viewport,
  type CellPicture,
  type CellStage,
  type FabricSide,
  type Room,
} from '../../canvas/index.ts';
import type { Following } from '../editing/following.ts';
import type { Cutting } from '../editing/cutting.ts';
import { drawAxes } from './axes.ts';
import { drawCursor, drawHover } from './cursor.ts';
import type { MotifLook } from './look.ts';
import { drawMeasured, hasSameMarks } from './measured-marks.ts';
import { drawSelection } from './selection.ts';
import { COLUMN_NUMBERS, drawRowRuns, drawRulerMarks, drawRulers, ROW_NUMBERS } from './rulers.ts';

export interface MotifScene {
  readonly grid: Grid;
  /** `#rrggbb` of each yarn; null leaves its cells open. */
  readonly colours: readonly (string | null)[];
  readonly measure: Measure;
  readonly following: Following;
  /** Selected or lifted cells. */
  readonly marked: Cutting | null;
  readonly showsNeighbours: boolean;
  /** The side of the fabric that is shown instead of the chart, or null. */
  readonly fabric: FabricSide | null;
  readonly look: MotifLook;
}

/** What the pointer and the keyboard are on. */
export interface Pointed {
  readonly hover: Cell | null;
  readonly cursor: Cell | null;
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

export class MotifDrawing {
  readonly #cells: CellStage;
  readonly #marks: Konva.Layer;
  readonly #pointer: Konva.Layer;
  #scene: MotifScene;
  #view: Viewport;
  #pointed: Pointed = { hover: null, cursor: null };

  constructor(container: HTMLDivElement, scene: MotifScene, view: Viewport, width: number, height: number) {
    this.#scene = scene;
    this.#view = view;
    const { lines } = scene.look;
    this.#cells = createCellStage(container, { picture: pictureOf(scene), viewport: view, width, height, lines });
    this.#cells.setFabric(scene.fabric);
    this.#marks = shapeLayer((context) => this.#drawMarks(context));
    this.#pointer = shapeLayer((context) => this.#drawPointer(context));
    this.#cells.konva.add(this.#marks, this.#pointer);
  }

  show(scene: MotifScene): void {
    const before = this.#scene;
    if (scene === before) return;
    this.#scene = scene;
    if (scene.look !== before.look) this.#cells.setLines(scene.look.lines);
    this.#cells.setFabric(scene.fabric);
    this.#cells.show(pictureOf(scene));
    // A stroke that leaves all that is marked alone redraws its own cells only.
    if (!isMarkedAlike(scene, before)) this.#drawAbove();
  }

  look(view: Viewport): void {
    if (view.isSame(this.#view)) return;
    this.#view = view;
    this.#cells.look(view);
    this.#drawAbove();
  }

  point(pointed: Pointed): void {
    if (isSameCell(pointed.hover, this.#pointed.hover) && isSameCell(pointed.cursor, this.#pointed.cursor)) return;
    this.#pointed = pointed;
    this.#pointer.batchDraw();
  }

  resize(width: number, height: number): void {
    this.#cells.resize(width, height);
    this.#marks.draw();
    this.#pointer.draw();
  }

  /** Draws again what is text, once the font is there. */
  refresh(): void {
    this.#drawAbove();
  }

  destroy(): void {
    this.#cells.destroy();
  }

  #drawAbove(): void {
    this.#marks.batchDraw();
    this.#pointer.batchDraw();
  }

  #drawMarks(context: CanvasRenderingContext2D): void {
    const { grid, measure, following, marked, fabric, look } = this.#scene;
    // What is written on the chart is not on the fabric, and may be seen from its other side.
    if (fabric) return;
    const view = this.#view;
    const width = this.#cells.konva.width();
    const height = this.#cells.konva.height();
    drawMeasured(context, view, grid, measure, look, width, height);
    drawAxes(context, view, grid, following, look, width, height);
    if (marked) drawSelection(context, view, marked, look);
    drawRulers(context, view, grid, look, width, height);
    drawRowRuns(context, view, grid, runsOf(measure.manyYarns), look, width, height);
  }

  #drawPointer(context: CanvasRenderingContext2D): void {
    const { grid, fabric, look } = this.#scene;
    const { hover, cursor } = this.#pointed;
    const marked = hover ?? cursor;
    if (marked && !fabric) {
      const { konva } = this.#cells;
      drawRulerMarks(context, this.#view, grid, marked, look, konva.width(), konva.height());
    }
    if (hover) drawHover(context, this.#view, hover, look);
    if (cursor) drawCursor(context, this.#view, cursor, look);
  }
}

/** The whole motif with its neighbours, as large as it goes. */
export function fittedView(scene: MotifScene, aspect: number, width: number, height: number): Viewport {
  const area = shownArea(scene);
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
export function shownArea({ grid, showsNeighbours }: MotifScene): CellBox {
  const { columns, rows } = showsNeighbours ? NEIGHBOURS : NO_NEIGHBOURS;
  return { column: -columns, row: -rows, width: grid.width + 2 * columns, height: grid.height + 2 * rows };
}

function pictureOf(scene: MotifScene): CellPicture {
  const { grid, colours, showsNeighbours } = scene;
  const { width, height } = tileOf(scene);
  return { grid, colours, surround: showsNeighbours ? { tileWidth: width, tileHeight: height, ...NEIGHBOURS } : null };
}

/** What the neighbours repeat; while a large drawing is being measured its old repeat may not fit any more. */
function tileOf({ grid, measure: { repeat } }: MotifScene): { width: number; height: number } {
  return { width: Math.min(repeat.width, grid.width), height: Math.min(repeat.height, grid.height) };
}

function isMarkedAlike(a: MotifScene, b: MotifScene): boolean {
  return (
    a.look === b.look &&
    a.fabric === b.fabric &&
    a.following === b.following &&
    a.marked === b.marked &&
    a.grid.width === b.grid.width &&
    a.grid.height === b.grid.height &&
    hasSameMarks(a.measure, b.measure)
  );
}

function isSameCell(a: Cell | null, b: Cell | null): boolean {
  return a?.column === b?.column && a?.row === b?.row;
}

function shapeLayer(draw: (context: CanvasRenderingContext2D) => void): Konva.Layer {
  const layer = new Konva.Layer({ listening: false });
  layer.add(
    new Konva.Shape({ listening: false, perfectDrawEnabled: false, sceneFunc: (context) => draw(context._context) }),
  );
  return layer;
}
