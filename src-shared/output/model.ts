/**
 * The sheet as it is printed, previewed and filed: one drawing for all three.
 *
 * A document is pages of elements. An element says what its items are to a
 * reader (a heading, a figure with its description, the cell of a table), so
 * that the PDF can be tagged and the preview read out. Items are placed in mm
 * from the page's top left corner, y downwards. Backends draw and decide
 * nothing.
 */
import type { Day } from '../day/index.ts';
import type { Rich } from '../words/index.ts';
import type { PaperSize } from './paper.ts';
import type { Paint, Tone } from './tones.ts';

export interface SheetDocument {
  readonly title: string;
  /** What it is, for the file's properties. */
  readonly subject: string;
  /** BCP 47. */
  readonly language: string;
  readonly paper: PaperSize;
  /** The day that it was made. */
  readonly date: Day;
  readonly pages: readonly SheetPage[];
}

export interface SheetPage {
  /** Named in the preview and to assistive technology. */
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly elements: readonly SheetElement[];
}

export type SheetElement =
  | { readonly role: 'heading'; readonly level: 1 | 2 | 3; readonly items: readonly SheetItem[] }
  | { readonly role: 'paragraph'; readonly items: readonly SheetItem[] }
  | { readonly role: 'list'; readonly entries: readonly ListEntry[] }
  | { readonly role: 'figure'; readonly description: string; readonly items: readonly SheetItem[] }
  | { readonly role: 'table'; readonly title: string; readonly rows: readonly TableRow[] }
  /** Running heads and rules: seen, but not read out. */
  | { readonly role: 'decoration'; readonly items: readonly SheetItem[] };

export interface ListEntry {
  readonly label: readonly SheetItem[];
  readonly body: readonly SheetItem[];
}

export interface TableRow {
  readonly isHeader: boolean;
  /** One a column; empty where there is nothing to say. */
  readonly cells: readonly (readonly SheetItem[])[];
}

export type SheetItem = TextItem | RectangleItem | PathItem | CellsItem;

/** One line of text. */
export interface TextItem {
  readonly kind: 'text';
  readonly x: number;
  /** The baseline. */
  readonly y: number;
  readonly sizePt: number;
  /** Which point of the line stands at `x`. */
  readonly anchor: 'start' | 'middle' | 'end';
  readonly tone: Tone;
  readonly spans: Rich;
}

export interface RectangleItem {
  readonly kind: 'rectangle';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly fill: Paint | null;
  readonly stroke: Stroke | null;
}

export type Point = readonly [x: number, y: number];

/** Lines through points, drawn as one. */
export interface PathItem {
  readonly kind: 'path';
  readonly lines: readonly (readonly Point[])[];
  readonly isClosed: boolean;
  readonly fill: Paint | null;
  readonly stroke: Stroke | null;
}

export interface Stroke {
  readonly paint: Paint;
  readonly width: number;
  /** Lengths on and off; absent for a solid line. */
  readonly dash?: readonly [on: number, off: number];
}

/**
 * Many cells of one colour, run-length: one shape to a backend, however many
 * cells it holds. Neighbouring cells of one item show no seam.
 */
export interface CellsItem {
  readonly kind: 'cells';
  /** Top left corner of cell (0, 0). */
  readonly x: number;
  readonly y: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  readonly fill: Paint;
  readonly runs: readonly CellRun[];
}

/** `length` cells from `column` on, in `line` counted from the top. */
export interface CellRun {
  readonly column: number;
  readonly line: number;
  readonly length: number;
}
