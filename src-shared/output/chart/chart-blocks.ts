/** The chart of a motif on the sheet: a heading, what it shows, the cells, the key of yarns. */
import type { Side } from '../../bed/index.ts';
import type { CellBox } from '../../grid/index.ts';
import { cellAspect, type Gauge } from '../../piece/index.ts';
import { words, type Rich } from '../../words/index.ts';
import { wholeBlock, type Block } from '../blocks/block.ts';
import { headingBlock, paragraphBlock } from '../blocks/text.ts';
import { widthMm as textWidthMm } from '../font/metrics.ts';
import { printable } from '../font/printable.ts';
import { shorten } from '../font/wrap.ts';
import { rectangleItem, textItem } from '../items.ts';
import type { SheetItem } from '../model.ts';
import { baselineMm, BOLD_LINE_MM, HAIRLINE_MM, LABEL_PT, LINE_MM, lineHeightMm, SMALL_PT } from '../style.ts';
import { yarnPaint } from '../tones.ts';
import { chartGutters, drawChart, drawNumbers, type ChartNumbers } from './drawing.ts';
import { markItem, marksOf, type ChartPlace } from './layers.ts';
import { chartParts, type ChartParts, type ChartRoom } from './parts.ts';
import { yarnsInUse, type ChartSubject } from './subject.ts';

export interface ChartOnSheet {
  readonly subject: ChartSubject;
  readonly name: string;
  readonly gauge: Gauge;
  /** Which way round it lies, what is hatched, how large it comes out. */
  readonly about: readonly Rich[];
  readonly counterFrom: number | null;
  /** The side that the carriage leaves from, for each row from the bottom; null where it is not said. */
  readonly carriage: readonly (Side | null)[] | null;
}

/** Brackets stand this far outside the cells. */
const BRACKET_ROOM_MM = 2;
const KEY_SWATCH_MM = 3;
const KEY_GAP_MM = 5;

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
  const key = keyBlock(chart.subject, room.widthMm);
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
        isPixels: false,
      };
      return [
        {
          role: 'figure',
          description: words.sheet.chart.description(chart.name, part),
          items: [
            ...drawChart(subject, part, place, { gridLines: true, repeatBox: true, marks: true }),
            ...drawNumbers(subject, part, place, numbers),
          ],
        },
      ];
    },
    true,
  );
}

/** Patches of the yarns in use with their names, as many to a line as fit. */
function keyBlock(subject: ChartSubject, widthMm: number): Block {
  const marks = marksOf(subject);
  const used = yarnsInUse(subject);
  // Many yarns stand in columns with shortened names, so that the key leaves room for the chart.
  const inColumns = used.length > 36 ? 4 : used.length > 12 ? 3 : 1;
  const most = widthMm / inColumns - 2 * KEY_GAP_MM;
  const entries = used.map((yarn, index) => {
    const name = printable(words.sheet.chart.key(subject.yarns[yarn]?.name ?? '', index === 0));
    const text = shorten(name, most, LABEL_PT);
    return { yarn, text, width: KEY_GAP_MM + textWidthMm(text, LABEL_PT) + KEY_GAP_MM };
  });
  const lines: (typeof entries)[] = [[]];
  let usedMm = 0;
  for (const entry of entries) {
    if (usedMm > 0 && usedMm + entry.width - KEY_GAP_MM > widthMm) {
      lines.push([]);
      usedMm = 0;
    }
    lines.at(-1)?.push(entry);
    usedMm += entry.width;
  }
  const lineHeight = lineHeightMm(LABEL_PT) + 0.4;
  return wholeBlock(lines.length * lineHeight, 1.2, (x, y) => {
    const items: SheetItem[] = [];
    lines.forEach((line, index) => {
      let left = x;
      const top = y + index * lineHeight;
      for (const { yarn, text, width } of line) {
        const colour = subject.yarns[yarn]?.colour ?? '#ffffff';
        const middle = top + lineHeightMm(LABEL_PT) / 2;
        const mark = marks.get(yarn);
        items.push(
          rectangleItem(left, middle - KEY_SWATCH_MM / 2, KEY_SWATCH_MM, KEY_SWATCH_MM, yarnPaint(colour), {
            paint: 'rule',
            width: HAIRLINE_MM,
          }),
        );
        if (mark) items.push(markItem(mark, colour, left + KEY_SWATCH_MM / 2, middle, KEY_SWATCH_MM));
        items.push(textItem(text, left + KEY_GAP_MM - 0.8, top + baselineMm(LABEL_PT), { sizePt: LABEL_PT }));
        left += width;
      }
    });
    return [{ role: 'paragraph', items }];
  });
}
