/** The drawing of cells and grid lines on a plain canvas, in whole device pixels. */
import type { CellBox } from '@shared/grid/index.ts';
import type { CellBitmap } from './bitmap.ts';
import { clippedBox } from './changed.ts';
import { lineSteps } from './lines.ts';
import { pictureArea, type CellPicture } from './picture.ts';
import type { PixelBox, Viewport } from './viewport.ts';

/** Colours of plain grid lines, of every fifth and every tenth beside plain ones, and of the line around the chart. */
export interface LineColours {
  readonly plain: string;
  readonly fifth: string;
  readonly tenth: string;
  readonly edge: string;
}

/** A viewport in device pixels. Edges of cells are whole, so neighbouring cells meet without seam or overlap. */
export class DeviceView {
  readonly width: number;
  readonly height: number;
  constructor(
    readonly viewport: Viewport,
    cssWidth: number,
    cssHeight: number,
    readonly ratio: number,
  ) {
    this.width = Math.ceil(cssWidth * ratio);
    this.height = Math.ceil(cssHeight * ratio);
  }

  get cellWidth(): number {
    return this.viewport.cellWidth * this.ratio;
  }

  get cellHeight(): number {
    return this.viewport.cellHeight * this.ratio;
  }

  /** Thickness of a fine line. */
  get line(): number {
    return Math.max(1, Math.round(this.ratio));
  }

  /** First device pixel of a column; where a canvas that does not smooth begins to sample it. */
  column(column: number): number {
    return Math.ceil((this.viewport.x + column * this.viewport.cellWidth) * this.ratio - 0.5);
  }

  /** First device pixel below the lower edge of a row. */
  row(row: number): number {
    return Math.ceil((this.viewport.y - row * this.viewport.cellHeight) * this.ratio - 0.5);
  }
}

/** Draws the picture; of `part`, which the context is clipped to, or all. */
export function drawCells(
  context: CanvasRenderingContext2D,
  view: DeviceView,
  picture: CellPicture,
  bitmap: CellBitmap,
  lines: LineColours | null,
  part: PixelBox | null,
): void {
  // What is under the numbers beside a chart is no cell.
  if (part && !clippedBox(view.viewport.cellsOf(part), bitmap.area)) return;
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  blit(context, view, bitmap);
  if (lines) drawLines(context, view, picture, lines, part);
  context.restore();
}

/** What a change of the cells in a box reaches, in CSS pixels: the grid lines along their edges too, and what smoothing spreads of it. */
export function reachOf(view: DeviceView, box: CellBox): PixelBox {
  const left = view.column(box.column) - 2;
  const top = view.row(box.row + box.height) - 2;
  return {
    left: left / view.ratio,
    top: top / view.ratio,
    width: (view.column(box.column + box.width) + view.line + 2 - left) / view.ratio,
    height: (view.row(box.row) + view.line + 2 - top) / view.ratio,
  };
}

/** Keeps what is drawn to the rows `from` up to and without `to`. */
export function clipRows(context: CanvasRenderingContext2D, view: DeviceView, from: number, to: number): void {
  const top = Math.max(0, view.row(to));
  const bottom = Math.min(view.height, view.row(from));
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.beginPath();
  context.rect(0, top, view.width, Math.max(0, bottom - top));
  context.clip();
}

/** Enlarges the part of the bitmap that shows. */
function blit(context: CanvasRenderingContext2D, view: DeviceView, { area, canvas }: CellBitmap): void {
  const shown = clippedBox(view.viewport.cellsIn(view.width / view.ratio, view.height / view.ratio), area);
  if (!shown) return;
  // Below a pixel a cell, leaving cells out would hide columns; their mean shows them all.
  context.imageSmoothingEnabled = Math.min(view.cellWidth, view.cellHeight) < 1;
  context.drawImage(
    canvas,
    shown.column - area.column,
    area.row + area.height - shown.row - shown.height,
    shown.width,
    shown.height,
    view.viewport.left(shown.column) * view.ratio,
    view.viewport.top(shown.row + shown.height - 1) * view.ratio,
    shown.width * view.cellWidth,
    shown.height * view.cellHeight,
  );
}

function drawLines(
  context: CanvasRenderingContext2D,
  view: DeviceView,
  picture: CellPicture,
  colours: LineColours,
  part: PixelBox | null,
): void {
  const { grid, surround } = picture;
  const chart: CellBox = { column: 0, row: 0, width: grid.width, height: grid.height };
  const seen = part
    ? view.viewport.cellsOf(part)
    : view.viewport.cellsIn(view.width / view.ratio, view.height / view.ratio);
  const steps = lineSteps(Math.min(view.viewport.cellWidth, view.viewport.cellHeight));
  const around = surround && steps[0]?.every === 1 ? clippedBox(pictureArea(picture), seen) : null;
  if (around && surround) {
    context.globalAlpha = surround.strength;
    context.fillStyle = colours.plain;
    ruleCells(context, view, around, 1);
    context.globalAlpha = 1;
  }
  const shown = clippedBox(chart, seen);
  if (!shown) return;
  const strengths = [colours.plain, colours.fifth, colours.tenth];
  for (const { every, weight } of steps) {
    context.fillStyle = strengths[weight - 1] ?? colours.tenth;
    ruleCells(context, view, shown, every);
  }
  context.fillStyle = colours.edge;
  ruleEdge(context, view, chart);
}

/** Lines along the edges of every `every`-th column and row of the chart, inside `box`. */
function ruleCells(context: CanvasRenderingContext2D, view: DeviceView, box: CellBox, every: number): void {
  const thick = view.line;
  const left = view.column(box.column);
  const right = view.column(box.column + box.width);
  const top = view.row(box.row + box.height);
  const bottom = view.row(box.row);
  for (let column = Math.ceil(box.column / every) * every; column <= box.column + box.width; column += every) {
    context.fillRect(view.column(column), top, thick, bottom - top + thick);
  }
  for (let row = Math.ceil(box.row / every) * every; row <= box.row + box.height; row += every) {
    context.fillRect(left, view.row(row), right - left + thick, thick);
  }
}

/** A line around the chart. */
function ruleEdge(context: CanvasRenderingContext2D, view: DeviceView, chart: CellBox): void {
  const thick = view.line;
  const left = view.column(0);
  const right = view.column(chart.width);
  const top = view.row(chart.height);
  const bottom = view.row(0);
  context.fillRect(left, top, right - left + thick, thick);
  context.fillRect(left, bottom, right - left + thick, thick);
  context.fillRect(left, top + thick, thick, bottom - top - thick);
  context.fillRect(right, top + thick, thick, bottom - top - thick);
}
