/**
 * The chart of a motif as an image: cells in knitted proportion on whole
 * pixels, with or without numbers, grid lines and the box of the repeat.
 */
import type { Day } from '../day/index.ts';
import { cellAspect, type Gauge } from '../piece/index.ts';
import type { Motif } from '../motif/index.ts';
import type { Palette } from '../project/index.ts';
import { withAnchorCells, type AnchorCells } from './chart/anchored.ts';
import { chartGutters, drawChart, drawNumbers, type ChartNumbers } from './chart/drawing.ts';
import { alikeYarns, type ChartPlace } from './chart/layers.ts';
import { marksFor, type YarnMarks } from './chart/marks.ts';
import { chartOfMotif, wholeChart, type ChartSubject } from './chart/subject.ts';
import { escapeXml } from './escape.ts';
import { rectangleItem } from './items.ts';
import { POINT_MM } from './paper.ts';
import { FONT, itemsToSvg } from './svg.ts';

export interface ChartImageOptions {
  /** Gives the cells their proportion; null for square ones. */
  readonly gauge: Gauge | null;
  /** Height of a cell in whole pixels, at least 1. */
  readonly cellHeight: number;
  readonly numbers: boolean;
  readonly gridLines: boolean;
  /** Corner brackets round the true repeat, its blank columns hatched. */
  readonly repeatBox: boolean;
  /** Anchors of the copies on the piece, drawn in. */
  readonly anchors?: AnchorCells;
  /** Recorded in the file. */
  readonly date?: Day;
}

/** All lengths in whole pixels. */
export interface ChartImageSize {
  readonly width: number;
  readonly height: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** Top left corner of the cells. */
  readonly left: number;
  readonly top: number;
}

const NUMBER_GAP = 6;
const LEAST_TEXT = 9;
const MOST_TEXT = 14;

/** The size of an image before it is drawn. Throws `RangeError` for a cell that is not whole pixels. */
export function chartImageSize(motif: Motif, options: ChartImageOptions): ChartImageSize {
  return sizeOf(motif.grid, options);
}

/** The whole drawing of a motif as SVG, one user unit a pixel. */
export function chartSvg(motif: Motif, palette: Palette, options: ChartImageOptions): string {
  const subject = withAnchorCells(chartOfMotif(motif, palette), options.anchors ?? new Map());
  const part = wholeChart(subject);
  const size = sizeOf(motif.grid, options);
  const place = placeOf(size);
  const { width, height } = size;
  const items = [
    ...(size.left > 0 ? [rectangleItem(0, 0, width, height, 'paper')] : []),
    ...drawChart(subject, part, place, { ...options, marks: marksIn(subject, options) }),
    ...(options.numbers ? drawNumbers(subject, part, place, numbersOf(options)) : []),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" ${FONT}>` +
    `<title>${escapeXml(motif.name)}</title>${options.date ? dated(options.date) : ''}${itemsToSvg(items)}</svg>`
  );
}

/** The day as Dublin Core has it, in the element that SVG has for such facts. */
function dated(date: Day): string {
  return (
    '<metadata><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#" xmlns:dc="http://purl.org/dc/elements/1.1/">' +
    `<rdf:Description rdf:about=""><dc:date>${date}</dc:date></rdf:Description></rdf:RDF></metadata>`
  );
}

/** A pattern to be counted has marks where lightness does not tell its yarns apart. */
function marksIn(subject: ChartSubject, { gridLines, repeatBox }: ChartImageOptions): YarnMarks {
  return marksFor(gridLines || repeatBox ? alikeYarns(subject) : [], subject.ground);
}

/** A chart without numbers, lines or box is its cells alone, up to the edge of the image. */
export function isCellsOnly({ numbers, gridLines, repeatBox }: ChartImageOptions): boolean {
  return !numbers && !gridLines && !repeatBox;
}

function sizeOf(grid: ChartSubject['grid'], options: ChartImageOptions): ChartImageSize {
  const { gauge, cellHeight } = options;
  if (!Number.isInteger(cellHeight) || cellHeight < 1) throw new RangeError(`A cell of ${cellHeight} pixels`);
  const cellWidth = Math.max(1, Math.round(cellHeight * (gauge ? cellAspect(gauge) : 1)));
  const bold = boldOf(cellHeight);
  // Room for the brackets and for the far edge's line.
  const around = options.repeatBox ? 2 * bold + 3 : options.gridLines || options.numbers ? 2 : 0;
  const gutters = options.numbers ? chartGutters({ grid }, numbersOf(options)) : null;
  return {
    width: grid.width * cellWidth + around + Math.max(around, gutters ? Math.ceil(gutters.right) + 1 : 0),
    height: grid.height * cellHeight + around + Math.max(around, gutters ? Math.ceil(gutters.bottom) + 1 : 0),
    cellWidth,
    cellHeight,
    left: around,
    top: around,
  };
}

function placeOf({ left, top, cellWidth, cellHeight }: ChartImageSize): ChartPlace {
  const isLarge = cellHeight >= 12;
  return {
    x: left,
    y: top,
    cellWidth,
    cellHeight,
    thin: 1,
    medium: isLarge ? 2 : 1,
    bold: boldOf(cellHeight),
    mark: 1,
    isPixels: true,
  };
}

function boldOf(cellHeight: number): number {
  return cellHeight >= 12 ? 3 : 2;
}

function numbersOf({ cellHeight }: ChartImageOptions): ChartNumbers {
  const pixels = Math.min(MOST_TEXT, Math.max(LEAST_TEXT, Math.round(cellHeight * 0.55)));
  // Items give text in points and lengths in mm; here a unit is a pixel.
  return { sizePt: pixels / POINT_MM, gap: NUMBER_GAP, columns: [] };
}
