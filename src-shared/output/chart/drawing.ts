/** A part of a chart with its numbers, for the sheet and for images alike. */
import type { Side } from '../../bed/index.ts';
import type { CellBox } from '../../grid/index.ts';
import { sheetWords } from '../../words/sheet.ts';
import { CAPITAL_EM, widthMm } from '../font/metrics.ts';
import { textItem } from '../items.ts';
import type { SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import type { Tone } from '../tones.ts';
import {
  anchorRings,
  blankHatching,
  cellLayers,
  chartEdge,
  gridLines,
  repeatBrackets,
  yarnMarks,
  type ChartPlace,
} from './layers.ts';
import type { YarnMarks } from './marks.ts';
import { numbered } from './numbers.ts';
import type { ChartSubject } from './subject.ts';

export interface ChartShows {
  readonly gridLines: boolean;
  /** Corner brackets round the repeat, and its blank columns hatched. */
  readonly repeatBox: boolean;
  /** The yarns whose cells carry a mark. */
  readonly marks: YarnMarks;
}

export interface ChartNumbers {
  readonly sizePt: number;
  /** Between the cells and their numbers. */
  readonly gap: number;
  /** What stands left of the cells, the leftmost first. */
  readonly columns: readonly RowColumn[];
}

/** Row counter and carriage of the rows of a chart where it stands. */
export interface RowColumn {
  /** Stands above the column; null for nothing. */
  readonly title: string | null;
  /** Added to a chart row to give the row counter; null where the column has no counter. */
  readonly counterFrom: number | null;
  /** The side that the carriage leaves from, by row from the bottom, as a letter left of the counter. */
  readonly carriage: readonly (Side | null)[];
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
    ...yarnMarks(subject, part, place, shows.marks),
    ...anchorRings(subject, part, place),
    ...(shows.repeatBox ? blankHatching(subject, part, place) : []),
    ...(shows.gridLines ? gridLines(subject, part, place) : shows.repeatBox ? [chartEdge(part, place)] : []),
    ...(shows.repeatBox ? repeatBrackets(subject, part, place) : []),
  ];
}

/** How much room the numbers of a chart need at most, whichever part is drawn. */
export function chartGutters({ grid }: Pick<ChartSubject, 'grid'>, numbers: ChartNumbers): ChartGutters {
  const { sizePt, gap, columns } = numbers;
  return {
    left: columns.reduce((sum, column) => sum + columnMm(grid, column, numbers), 0),
    right: widthMm(String(grid.height), sizePt) + gap,
    bottom: sizePt * POINT_MM + gap,
  };
}

/** Room for a letter that says a side. */
const LETTER_EM = 0.7;

function counterMm(
  { height }: ChartSubject['grid'],
  { counterFrom }: RowColumn,
  { sizePt, gap }: ChartNumbers,
): number {
  return counterFrom === null ? 0 : widthMm(String(counterFrom + height), sizePt) + gap;
}

function columnMm(grid: ChartSubject['grid'], column: RowColumn, numbers: ChartNumbers): number {
  return counterMm(grid, column, numbers) + numbers.gap + numbers.sizePt * POINT_MM * LETTER_EM;
}

/** Row numbers at the right (row 1 at the bottom), row counters and sides at the left, column numbers below. */
export function drawNumbers(
  { grid }: Pick<ChartSubject, 'grid'>,
  part: CellBox,
  place: ChartPlace,
  numbers: ChartNumbers,
): SheetItem[] {
  const { x, y, cellWidth, cellHeight } = place;
  const { sizePt, gap } = numbers;
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
  const besideRows = (): SheetItem[] => {
    let edge = x;
    return [...numbers.columns].reverse().flatMap((column): SheetItem[] => {
      const { title, counterFrom, carriage } = column;
      const counters = counterFrom === null ? [] : rowsAt(counterFrom, edge - gap, 'end', 'accent');
      const at = edge - gap - counterMm(grid, column, numbers);
      edge -= columnMm(grid, column, numbers);
      // One stands in each row, so it is its capital that has to fit.
      const size = Math.min(sizePt, (0.8 * cellHeight) / (CAPITAL_EM * POINT_MM));
      const letters = carriage.slice(part.row, part.row + part.height).flatMap((side, index) => {
        const baseline = rowBaseline(firstRow + index);
        return side
          ? [textItem(sheetWords.chart.sides[side], at, baseline, { sizePt: size, anchor: 'end', isStrong: true })]
          : [];
      });
      const above = title === null ? [] : [textItem(title, at, y - gap / 2, { sizePt, tone: 'soft', anchor: 'end' })];
      return [...counters, ...letters, ...above];
    });
  };
  const columns = numbered(
    part.column + 1,
    part.column + part.width,
    cellWidth,
    widthMm(String(part.column + part.width), sizePt) + 0.35 * sizePt * POINT_MM,
  );
  return [
    ...besideRows(),
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
