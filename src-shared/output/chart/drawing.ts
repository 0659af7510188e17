/** A part of a chart with its numbers, for the sheet and for images alike. */
import type { CellBox } from '../../grid/index.ts';
import { CAPITAL_EM, widthMm } from '../font/metrics.ts';
import { textItem } from '../items.ts';
import type { SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import type { Tone } from '../tones.ts';
import {
  blankHatching,
  cellLayers,
  chartEdge,
  gridLines,
  repeatBrackets,
  yarnMarks,
  type ChartPlace,
} from './layers.ts';
import { numbered } from './numbers.ts';
import type { ChartSubject } from './subject.ts';

export interface ChartShows {
  readonly gridLines: boolean;
  /** Corner brackets round the repeat, and its blank columns hatched. */
  readonly repeatBox: boolean;
  /** Marks in yarns that lightness does not tell apart. */
  readonly marks: boolean;
}

export interface ChartNumbers {
  readonly sizePt: number;
  /** Between the cells and their numbers. */
  readonly gap: number;
  /** Added to a chart row to give the row counter, written at the left; null for none. */
  readonly counterFrom: number | null;
}

/** Space that numbers take beside the cells. */
export interface ChartGutters {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
}

export function drawChart(subject: ChartSubject, part: CellBox, place: ChartPlace, shows: ChartShows): SheetItem[] {
  return [
    ...cellLayers(subject, part, place),
    ...(shows.marks ? yarnMarks(subject, part, place) : []),
    ...(shows.repeatBox ? blankHatching(subject, part, place) : []),
    ...(shows.gridLines ? gridLines(subject, part, place) : shows.repeatBox ? [chartEdge(part, place)] : []),
    ...(shows.repeatBox ? repeatBrackets(subject, part, place) : []),
  ];
}

/** How much room the numbers of a chart need at most, whichever part is drawn. */
export function chartGutters({ grid }: Pick<ChartSubject, 'grid'>, numbers: ChartNumbers): ChartGutters {
  const { sizePt, gap, counterFrom } = numbers;
  return {
    left: counterFrom === null ? 0 : widthMm(String(counterFrom + grid.height), sizePt) + gap,
    right: widthMm(String(grid.height), sizePt) + gap,
    bottom: sizePt * POINT_MM + gap,
  };
}

/** Row numbers at the right (row 1 at the bottom), row counter at the left, column numbers below. */
export function drawNumbers(part: CellBox, place: ChartPlace, numbers: ChartNumbers): SheetItem[] {
  const { x, y, cellWidth, cellHeight } = place;
  const { sizePt, gap, counterFrom } = numbers;
  const capital = sizePt * POINT_MM * CAPITAL_EM;
  const right = x + part.width * cellWidth;
  const bottom = y + part.height * cellHeight;
  const firstRow = part.row + 1;
  const lastRow = part.row + part.height;
  const rowBaseline = (row: number): number => bottom - (row - firstRow + 0.5) * cellHeight + capital / 2;
  const rowsAt = (from: number, at: number, anchor: 'start' | 'end', tone: Tone): SheetItem[] =>
    numbered(firstRow + from, lastRow + from, cellHeight, sizePt * POINT_MM * 0.95).map((row) =>
      textItem(String(row), at, rowBaseline(row - from), { sizePt, tone, anchor }),
    );
  const columns = numbered(
    part.column + 1,
    part.column + part.width,
    cellWidth,
    widthMm(String(part.column + part.width), sizePt) + 0.35 * sizePt * POINT_MM,
  );
  return [
    ...(counterFrom === null ? [] : rowsAt(counterFrom, x - gap, 'end', 'accent')),
    ...rowsAt(0, right + gap, 'start', 'soft'),
    ...columns.map((column) =>
      textItem(String(column), x + (column - part.column - 0.5) * cellWidth, bottom + gap + capital, {
        sizePt,
        tone: 'soft',
        anchor: 'middle',
      }),
    ),
  ];
}
