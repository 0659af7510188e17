/** The chart of a motif on the sheet: a heading, what it shows, the cells, the key of yarns. */
import type { Side } from '../../bed/index.ts';
import type { CellBox } from '../../grid/index.ts';
import { cellAspect, type Gauge } from '../../piece/index.ts';
import { words, type Rich } from '../../words/index.ts';
import { wholeBlock, type Block } from '../blocks/block.ts';
import { headingBlock, paragraphBlock } from '../blocks/text.ts';
import { printable } from '../font/printable.ts';
import { BOLD_LINE_MM, LABEL_PT, LINE_MM, MARK_MM, SMALL_PT } from '../style.ts';
import { chartGutters, drawChart, drawNumbers, type ChartNumbers } from './drawing.ts';
import type { ChartPlace } from './layers.ts';
import type { YarnMarks } from './marks.ts';
import { chartParts, type ChartParts, type ChartRoom } from './parts.ts';
import { yarnsInUse, type ChartSubject } from './subject.ts';
import { yarnKeyBlock } from './yarn-key.ts';

export interface ChartOnSheet {
  readonly subject: ChartSubject;
  readonly name: string;
  readonly gauge: Gauge;
  /** Which way round it lies, what is hatched, how large it comes out. */
  readonly about: readonly Rich[];
  /** By palette index, the same on all drawings of a sheet. */
  readonly marks: YarnMarks;
  readonly counterFrom: number | null;
  /** The side that the carriage leaves from, for each row from the bottom; null where it is not said. */
  readonly carriage: readonly (Side | null)[] | null;
}

/** Brackets stand this far outside the cells. */
const BRACKET_ROOM_MM = 2;

/** A chart laid out for a width and height: its blocks, one list a page. */
export interface ChartPages {
  readonly cellWidth: number;
  readonly pages: readonly (readonly Block[])[];
}

export function chartPages(chart: ChartOnSheet, room: ChartRoom): ChartPages {
  const numbers: ChartNumbers = {
    sizePt: LABEL_PT,
    gap: 1.8,
    counterFrom: chart.counterFrom,
    carriage: chart.carriage,
  };
  const gutters = chartGutters(chart.subject, numbers);
  const heading = (part: CellBox | null, index: number, count: number): Block =>
    headingBlock(words.sheet.chart.heading(printable(chart.name), part, index, count), room.widthMm);
  const about = chart.about.map((text) => paragraphBlock(text, room.widthMm, ABOUT));
  const { yarns } = chart.subject;
  const key = yarnKeyBlock({ yarns, used: yarnsInUse(chart.subject), marks: chart.marks }, room.widthMm);
  const above = [heading(null, 0, 1), ...about, key].reduce(
    (sum, block) => sum + block.spaceAboveMm + block.heightMm,
    0,
  );
  const { grid } = chart.subject;
  const laid = chartParts(grid.width, grid.height, cellAspect(chart.gauge), {
    widthMm: room.widthMm - gutters.left - gutters.right - 2 * BRACKET_ROOM_MM,
    // A heading may take a second line where the chart goes over pages.
    heightMm: room.heightMm - above - gutters.bottom - 2 * BRACKET_ROOM_MM - 8,
  });
  const count = laid.parts.length;
  return {
    cellWidth: laid.cellWidth,
    pages: laid.parts.map((part, index) => [
      heading(count > 1 ? part : null, index, count),
      ...(index === 0 ? about : []),
      partBlock(chart, part, laid, numbers),
      key,
    ]),
  };
}

const ABOUT = { sizePt: SMALL_PT, tone: 'soft', spaceAboveMm: 0.3, keepsWithNext: true } as const;

function partBlock(chart: ChartOnSheet, part: CellBox, laid: ChartParts, numbers: ChartNumbers): Block {
  const { subject } = chart;
  const gutters = chartGutters(subject, numbers);
  const cellsHeight = part.height * laid.cellHeight;
  const height = cellsHeight + gutters.bottom + 2 * BRACKET_ROOM_MM;
  return wholeBlock(
    height,
    1.5,
    (x, y) => {
      const place: ChartPlace = {
        x: x + gutters.left + BRACKET_ROOM_MM,
        y: y + BRACKET_ROOM_MM,
        cellWidth: laid.cellWidth,
        cellHeight: laid.cellHeight,
        thin: 0.1,
        medium: LINE_MM,
        bold: BOLD_LINE_MM,
        mark: MARK_MM,
        isPixels: false,
      };
      return [
        {
          role: 'figure',
          description: words.sheet.chart.description(chart.name, part),
          items: [
            ...drawChart(subject, part, place, { gridLines: true, repeatBox: true, marks: chart.marks }),
            ...drawNumbers(subject, part, place, numbers),
          ],
        },
      ];
    },
    true,
  );
}
