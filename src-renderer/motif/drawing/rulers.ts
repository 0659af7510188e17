/**
 * Row numbers at the right of the chart and column numbers under it. Where the
 * edge of the chart is out of sight they stand at the edge of the view instead.
 */
import type { Cell, Grid } from '@shared/grid/index.ts';
import { CHART_FONT, numbersIn, numberStep, type PixelBox, type Viewport } from '../../canvas/index.ts';
import type { MotifLook } from './look.ts';

/** Room the numbers take at the right and at the foot of the view. */
export const ROW_NUMBERS = 36;
export const COLUMN_NUMBERS = 24;

const FONT = `12px ${CHART_FONT}`;
const STRONG = `600 12px ${CHART_FONT}`;
/** From the chart to its numbers, past the brackets. */
const AWAY = 14;

/** Where the numbers stand in a view of `width` × `height` pixels. */
interface RulerPlace {
  /** Left edge of the row numbers. */
  readonly x: number;
  /** Middle of the column numbers. */
  readonly y: number;
  readonly isRowPinned: boolean;
  readonly isColumnPinned: boolean;
}

function rulerPlace(view: Viewport, grid: Pick<Grid, 'width' | 'height'>, width: number, height: number): RulerPlace {
  const x = view.left(grid.width) + AWAY;
  const y = view.y + AWAY + 6;
  const isRowPinned = x > width - ROW_NUMBERS;
  const isColumnPinned = y > height - COLUMN_NUMBERS / 2;
  return {
    x: isRowPinned ? width - ROW_NUMBERS + 6 : Math.max(x, AWAY),
    y: isColumnPinned ? height - COLUMN_NUMBERS / 2 : Math.max(y, COLUMN_NUMBERS / 2),
    isRowPinned,
    isColumnPinned,
  };
}

/** The chart that is numbered. Seen from its other side, column 1 is the last one to the right. */
export interface Numbered {
  readonly grid: Pick<Grid, 'width' | 'height'>;
  readonly isTurned: boolean;
}

/** The number of a column as it is seen, from 0, and the column of a number. */
export function columnNumber({ grid, isTurned }: Numbered, seen: number): number {
  return isTurned ? grid.width - seen : seen + 1;
}
export function columnSeen({ grid, isTurned }: Numbered, number: number): number {
  return isTurned ? grid.width - number : number - 1;
}

/** Draws the numbers that are in view. */
export function drawRulers(
  context: CanvasRenderingContext2D,
  view: Viewport,
  numbered: Numbered,
  look: MotifLook,
  width: number,
  height: number,
): void {
  const { grid } = numbered;
  const place = rulerPlace(view, grid, width, height);
  const seen = view.cellsIn(width, height);
  context.save();
  context.font = FONT;
  context.textBaseline = 'middle';
  context.fillStyle = look.surface;
  context.globalAlpha = 0.92;
  if (place.isRowPinned) context.fillRect(width - ROW_NUMBERS, 0, ROW_NUMBERS, height);
  if (place.isColumnPinned) context.fillRect(0, height - COLUMN_NUMBERS, width, COLUMN_NUMBERS);
  context.globalAlpha = 1;

  context.textAlign = 'left';
  const rowStep = numberStep(view.cellHeight, 18);
  for (const number of numbersIn(seen.row, seen.row + seen.height, grid.height, rowStep)) {
    const y = view.top(number - 1) + view.cellHeight / 2;
    if (place.isColumnPinned && y > height - COLUMN_NUMBERS - 8) continue;
    if (isFree(number, rowStep, view.cellHeight, 14)) write(context, look, String(number), place.x, y);
  }
  context.textAlign = 'center';
  const columnStep = numberStep(view.cellWidth, 34);
  const edges = [seen.column, seen.column + seen.width].map((edge) => (numbered.isTurned ? grid.width - edge : edge));
  for (const number of numbersIn(Math.min(...edges), Math.max(...edges), grid.width, columnStep)) {
    const x = view.left(columnSeen(numbered, number)) + view.cellWidth / 2;
    if (x < 12 || (place.isRowPinned && x > width - ROW_NUMBERS - 12)) continue;
    if (isFree(number, columnStep, view.cellWidth, 22)) write(context, look, String(number), x, place.y);
  }
  context.restore();
}

/** From the numbers to the mark beside them, and the length of its ends. */
const MARK_AWAY = 3;
const MARK_END = 4;

/** Holds runs of rows together beside their numbers: those with more than two yarns. */
export function drawRowRuns(
  context: CanvasRenderingContext2D,
  view: Viewport,
  grid: Pick<Grid, 'width' | 'height'>,
  runs: readonly { readonly first: number; readonly last: number }[],
  look: MotifLook,
  width: number,
  height: number,
): void {
  if (runs.length === 0) return;
  const x = rulerPlace(view, grid, width, height).x - MARK_AWAY;
  const path = new Path2D();
  for (const { first, last } of runs) {
    const top = view.top(last) + 1;
    const bottom = view.top(first - 1) - 1;
    if (bottom < 0 || top > height) continue;
    path.moveTo(x - MARK_END, top);
    path.lineTo(x, top);
    path.lineTo(x, Math.max(bottom, top + 2));
    path.lineTo(x - MARK_END, Math.max(bottom, top + 2));
  }
  context.save();
  context.strokeStyle = look.paper;
  context.lineWidth = 5;
  context.stroke(path);
  context.strokeStyle = look.ink;
  context.lineWidth = 2;
  context.stroke(path);
  context.restore();
}

/** The numbers of one cell set strong on the accent, over the plain ones; gives where they stand. */
export function drawRulerMarks(
  context: CanvasRenderingContext2D,
  view: Viewport,
  numbered: Numbered,
  { column, row }: Cell,
  look: MotifLook,
  width: number,
  height: number,
): PixelBox[] {
  const place = rulerPlace(view, numbered.grid, width, height);
  context.save();
  context.font = STRONG;
  context.textBaseline = 'middle';
  const rowText = String(row + 1);
  const rowWidth = context.measureText(rowText).width;
  const ofRow = tag(context, look, rowText, place.x + rowWidth / 2, view.top(row) + view.cellHeight / 2, rowWidth);
  const columnText = String(columnNumber(numbered, column));
  const columnWidth = context.measureText(columnText).width;
  const x = view.left(column) + view.cellWidth / 2;
  const ofColumn = tag(context, look, columnText, x, place.y, columnWidth);
  context.restore();
  return [ofRow, ofColumn];
}

/** The number 1 gives way where the next one would touch it. */
function isFree(number: number, step: number, size: number, room: number): boolean {
  return number !== 1 || (step - 1) * size >= room;
}

function write(context: CanvasRenderingContext2D, look: MotifLook, text: string, x: number, y: number): void {
  // Numbers may stand on faint copies; the paper shines through around them.
  context.lineJoin = 'round';
  context.lineWidth = 3;
  context.strokeStyle = look.paper;
  context.strokeText(text, x, y + 1);
  context.fillStyle = look.ink;
  context.fillText(text, x, y + 1);
}

function tag(
  context: CanvasRenderingContext2D,
  look: MotifLook,
  text: string,
  x: number,
  y: number,
  textWidth: number,
): PixelBox {
  const box = { left: x - textWidth / 2 - 5, top: y - 9, width: textWidth + 10, height: 18 };
  context.fillStyle = look.accent;
  context.beginPath();
  context.roundRect(box.left, box.top, box.width, box.height, 4);
  context.fill();
  context.textAlign = 'center';
  context.fillStyle = look.onAccent;
  context.fillText(text, x, y + 1);
  return box;
}
