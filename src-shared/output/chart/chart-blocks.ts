/** The chart of a motif on the sheet: a heading, what it shows, the cells, the key of yarns. */
import type { CellBox } from '../../grid/index.ts';
import { cellAspect, type Gauge } from '../../piece/index.ts';
import { plain, type Rich } from '../../words/index.ts';
import { sheetWords } from '../../words/sheet.ts';
import { wholeBlock, type Block } from '../blocks/block.ts';
import { headingBlock, paragraphBlock } from '../blocks/text.ts';
import { printable } from '../font/printable.ts';
import type { SheetElement } from '../model.ts';
import { BOLD_LINE_MM, LABEL_PT, LINE_MM, MARK_MM } from '../style.ts';
import { chartGutters, drawChart, drawNumbers, type ChartNumbers } from './drawing.ts';
import type { ChartPlace } from './layers.ts';
import type { YarnMarks } from './marks.ts';
import { JOIN_STRIP_MM, joinLines, joinsOf, joinTexts, type Joins } from './joins.ts';
import { pageMap, type PageMap } from './page-map.ts';
import { chartParts, type ChartPart, type ChartParts, type ChartRoom } from './parts.ts';
import type { Stand } from './stands.ts';
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
  /** Where it stands on the piece; none where it is not placed. */
  readonly stands: readonly Stand[];
}

/** Brackets stand this far outside the cells. */
const BRACKET_ROOM_MM = 2;
const ABOVE_CELLS_MM = 1.5;

/** A chart laid out for a width and height: its blocks, one list a page. */
export interface ChartPages {
  readonly cellWidth: number;
  readonly pages: readonly (readonly Block[])[];
}

/** Of the head of each page that a large chart takes, the map of its pages has no more. */
const MAP_MM = 62;
const MAP_GAP_MM = 6;
const LEAST_HEAD_MM = 26;

/**
 * A chart on one page if its cells can be counted there. Otherwise each part has
 * a page from `firstPage` on (after one with the map alone, where that is too
 * large for the heads of pages), so that it can name the pages it joins.
 */
export function chartPages(chart: ChartOnSheet, room: ChartRoom, firstPage: number): ChartPages {
  const { grid, yarns } = chart.subject;
  const numbers = numbersOf(chart);
  const key = yarnKeyBlock({ yarns, used: yarnsInUse(chart.subject), marks: chart.marks }, room.widthMm);
  const head = headBlocks(chart, null, room.widthMm);
  const aspect = cellAspect(chart.gauge);
  const laidIn = (heightMm: number): ChartParts =>
    chartParts(grid.width, grid.height, aspect, cellRoom(chart, numbers, { ...room, heightMm }));
  const whole = laidIn(room.heightMm - heightOf([...head, key]));
  const [only] = whole.parts;
  if (whole.parts.length === 1 && only) {
    const block = partBlock(chart, only, whole, numbers, null);
    return { cellWidth: whole.cellWidth, pages: [[...head, block, key]] };
  }

  const headWidth = room.widthMm - MAP_MM - MAP_GAP_MM;
  const longest = { of: { column: grid.width, row: grid.height, width: 0, height: 0 }, index: 999, count: 999 };
  const headMm = Math.max(LEAST_HEAD_MM, heightOf(headBlocks(chart, longest, headWidth)));
  const laid = laidIn(room.heightMm - headMm - heightOf([key]) - 2 * JOIN_STRIP_MM);
  const mapFrom = (page: number): PageMap => pageMap(laid, page, MAP_MM, headMm);
  const overview = mapFrom(firstPage).isNumbered ? [] : [overviewBlocks(chart, laid, firstPage + 1, room)];
  const first = firstPage + overview.length;
  const map = mapFrom(first);
  const count = laid.parts.length;
  const pages = laid.parts.map((part, index) => {
    const blocks = headBlocks(chart, { of: part.own, index, count }, headWidth);
    const beside = (x: number, y: number): SheetElement =>
      map.draw(chart.name, index, x + room.widthMm - map.widthMm, y + 1);
    return [headBlock(blocks, headMm, beside), partBlock(chart, part, laid, numbers, joinsOf(laid, part, first)), key];
  });
  return { cellWidth: laid.cellWidth, pages: [...overview, ...pages] };
}

function numbersOf({ stands }: ChartOnSheet): ChartNumbers {
  const isCounted = stands.every(({ starts }) => starts.length === 1);
  return {
    sizePt: LABEL_PT,
    gap: 1.8,
    columns: stands.map(({ starts, carriage }, index) => ({
      title: isCounted || stands.length === 1 ? null : sheetWords.chart.places.title(index),
      counterFrom: isCounted ? (starts[0] ?? 1) - 1 : null,
      carriage,
    })),
  };
}

function heightOf(blocks: readonly Block[]): number {
  return blocks.reduce((sum, block) => sum + block.spaceAboveMm + block.heightMm, 0);
}

/** What is left for cells of the room for a chart. */
function cellRoom({ subject }: ChartOnSheet, numbers: ChartNumbers, { widthMm, heightMm }: ChartRoom): ChartRoom {
  const gutters = chartGutters(subject, numbers);
  return {
    widthMm: widthMm - gutters.left - gutters.right - 2 * BRACKET_ROOM_MM,
    heightMm: heightMm - gutters.bottom - 2 * BRACKET_ROOM_MM - ABOVE_CELLS_MM,
  };
}

interface PartNamed {
  readonly of: CellBox;
  readonly index: number;
  readonly count: number;
}

/** The heading, and what is said of the chart; of a part also what it repeats. */
function headBlocks(chart: ChartOnSheet, part: PartNamed | null, widthMm: number): Block[] {
  const { heading, lap } = sheetWords.chart;
  const name = printable(chart.name);
  return [
    headingBlock(heading(name, part?.of ?? null, part?.index ?? 0, part?.count ?? 1), widthMm),
    ...[...chart.about, ...(part ? [plain(lap)] : [])].map((text) => paragraphBlock(text, widthMm, ABOUT)),
  ];
}

const ABOUT = { tone: 'soft', spaceAboveMm: 0.3, keepsWithNext: true } as const;

/** Blocks one below the other at the top of a page, and something at their right. */
function headBlock(blocks: readonly Block[], heightMm: number, beside: (x: number, y: number) => SheetElement): Block {
  return wholeBlock(
    heightMm,
    0,
    (x, y) => {
      let top = y;
      const drawn = blocks.flatMap((block, index) => {
        top += index === 0 ? 0 : block.spaceAboveMm;
        const elements = block.draw(x, top);
        top += block.heightMm;
        return elements;
      });
      return [...drawn, beside(x, y)];
    },
    true,
  );
}

/** A page with the map alone. */
function overviewBlocks(chart: ChartOnSheet, laid: ChartParts, firstPage: number, room: ChartRoom): Block[] {
  const caption = paragraphBlock(plain(sheetWords.chart.mapCaption), room.widthMm, { keepsWithNext: true });
  const head = [...headBlocks(chart, null, room.widthMm), caption];
  const map = pageMap(laid, firstPage, room.widthMm, room.heightMm - heightOf(head) - 4);
  return [...head, wholeBlock(map.heightMm, 4, (x, y) => [map.draw(chart.name, null, x, y)])];
}

function partBlock(
  chart: ChartOnSheet,
  part: ChartPart,
  laid: ChartParts,
  numbers: ChartNumbers,
  joins: Joins | null,
): Block {
  const { subject } = chart;
  const gutters = chartGutters(subject, numbers);
  const cellsHeight = part.height * laid.cellHeight;
  const strip = joins ? JOIN_STRIP_MM : 0;
  const height = strip + cellsHeight + gutters.bottom + 2 * BRACKET_ROOM_MM + strip;
  return wholeBlock(
    height,
    ABOVE_CELLS_MM,
    (x, y) => {
      const place: ChartPlace = {
        x: x + gutters.left + BRACKET_ROOM_MM,
        y: y + strip + BRACKET_ROOM_MM,
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
          description: sheetWords.chart.description(chart.name, part),
          items: [
            ...drawChart(subject, part, place, { gridLines: true, repeatBox: true, marks: chart.marks }),
            ...drawNumbers(subject, part, place, numbers),
            ...joinLines(part, place),
            ...(joins ? joinTexts(joins, part, place, y, y + height - strip) : []),
          ],
        },
      ];
    },
    true,
  );
}
