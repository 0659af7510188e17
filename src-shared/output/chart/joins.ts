/** Where a part of a chart joins others: the line it is cut along, and the page that goes on there. */
import { sheetWords } from '../../words/sheet.ts';
import { CAPITAL_EM, widthMm } from '../font/metrics.ts';
import { areaItem, pathItem, textItem } from '../items.ts';
import type { Point, SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import { LABEL_PT } from '../style.ts';
import type { ChartPlace } from './layers.ts';
import type { ChartPart, ChartParts } from './parts.ts';

type JoinSide = 'left' | 'up' | 'right' | 'down';

/** The pages that a part joins; a side without is an edge of the chart. */
export type Joins = { readonly [Side in JoinSide]: number | null };

/** What goes on at each side of a part, where the first part stands on page `firstPage` and each has a page. */
export function joinsOf({ across, up, parts }: ChartParts, part: ChartPart, firstPage: number): Joins {
  const pageAt = (column: number, row: number): number | null => {
    if (column < 0 || column >= across || row < 0 || row >= up) return null;
    return firstPage + parts.findIndex((other) => other.across === column && other.up === row);
  };
  return {
    left: pageAt(part.across - 1, part.up),
    right: pageAt(part.across + 1, part.up),
    up: pageAt(part.across, part.up + 1),
    down: pageAt(part.across, part.up - 1),
  };
}

/** Taken above the cells, and below their numbers. */
export const JOIN_STRIP_MM = 4.8;
/** The line reaches out of the cells. */
const OUT_MM = 1.6;
const CASING_MM = 0.9;
const CUT_MM = 0.45;
const ARROW_MM = 2;
const BETWEEN_MM = 4;

/** The cut lines of a part, between its own cells and those it repeats. */
export function joinLines(part: ChartPart, { x, y, cellWidth, cellHeight }: ChartPlace): SheetItem[] {
  const { own } = part;
  const [right, bottom] = [x + part.width * cellWidth, y + part.height * cellHeight];
  const atColumn = (column: number): number => x + (column - part.column) * cellWidth;
  const atRow = (row: number): number => bottom - (row - part.row) * cellHeight;
  const lines: Point[][] = [];
  const upright = (at: number): void =>
    void lines.push([
      [at, y - OUT_MM],
      [at, bottom + OUT_MM],
    ]);
  const level = (at: number): void =>
    void lines.push([
      [x - OUT_MM, at],
      [right + OUT_MM, at],
    ]);
  if (own.column > part.column) upright(atColumn(own.column));
  if (own.column + own.width < part.column + part.width) upright(atColumn(own.column + own.width));
  if (own.row > part.row) level(atRow(own.row));
  if (own.row + own.height < part.row + part.height) level(atRow(own.row + own.height));
  if (lines.length === 0) return [];
  // On paper of its own, so that it is seen on a yarn of any colour.
  return [
    pathItem(lines, { paint: 'paper', width: CASING_MM }),
    pathItem(lines, { paint: 'accent', width: CUT_MM, dash: [2, 1.2] }),
  ];
}

/** `joins page 4` at each side that goes on: three in the strip above the cells, one in that below their numbers. */
export function joinTexts(joins: Joins, part: ChartPart, place: ChartPlace, above: number, below: number): SheetItem[] {
  const { x, cellWidth } = place;
  const width = part.width * cellWidth;
  const wanted = (['left', 'up', 'right', 'down'] as const).flatMap((side) => {
    const page = joins[side];
    if (page === null) return [];
    const text = sheetWords.chart.joins(page);
    const long = widthMm(text, LABEL_PT, true) + ARROW_MM + 1;
    const at = { left: x, up: x + (width - long) / 2, right: x + width - long, down: x + (width - long) / 2 }[side];
    return [{ side, text, long, at: Math.max(x, at) }];
  });
  let free = -Infinity;
  return wanted.flatMap(({ side, text, long, at }) => {
    const left = side === 'down' ? at : Math.max(at, free);
    if (side !== 'down') free = left + long + BETWEEN_MM;
    return joinText(side, text, left, side === 'down' ? below : above);
  });
}

function joinText(side: JoinSide, text: string, left: number, top: number): SheetItem[] {
  const capital = LABEL_PT * POINT_MM * CAPITAL_EM;
  const middle = top + JOIN_STRIP_MM / 2;
  const isAfter = side === 'right';
  const textAt = isAfter ? left : left + ARROW_MM + 1;
  const arrowAt = isAfter ? left + widthMm(text, LABEL_PT, true) + 1 : left;
  return [
    areaItem(arrow(side, arrowAt, middle), 'accent', null),
    textItem(text, textAt, middle + capital / 2, { sizePt: LABEL_PT, tone: 'accent', isStrong: true }),
  ];
}

function arrow(side: JoinSide, x: number, middle: number): Point[] {
  const half = ARROW_MM / 2;
  const [left, right, top, bottom] = [x, x + ARROW_MM, middle - half, middle + half];
  const centre = x + half;
  switch (side) {
    case 'left':
      return [
        [left, middle],
        [right, top],
        [right, bottom],
      ];
    case 'right':
      return [
        [right, middle],
        [left, top],
        [left, bottom],
      ];
    case 'up':
      return [
        [centre, top],
        [right, bottom],
        [left, bottom],
      ];
    case 'down':
      return [
        [centre, bottom],
        [right, top],
        [left, top],
      ];
  }
}
