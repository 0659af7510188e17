/** Sizes and spaces of the sheet, in points and mm. */
import { POINT_MM } from './paper.ts';

export const TITLE_PT = 20;
export const HEADING_PT = 13;
export const BODY_PT = 10;
export const TABLE_PT = 10;
/** The row list and the readings of the row counter, read from where the carriage is moved. */
export const READ_PT = 11;
/** Labels in figures and charts. */
export const LABEL_PT = 10;
/** What is not read at the machine: running heads, captions, notes. */
export const SMALL_PT = 8.5;

/** From one baseline to the next, as a multiple of the size. */
export const LEADING = 1.36;

export const PAGE_MARGIN_MM = 16;
/** White below what stands on a page. */
export const PAGE_FOOT_MM = 14;
/** Above the running head's baseline. */
export const HEAD_BASELINE_MM = 10.5;
/** What is read in long lines is set no wider. */
export const READING_MM = 155;

export const HAIRLINE_MM = 0.15;
/** The strokes of yarns' marks: thin, and still seen on a printer of 300 dots to the inch. */
export const MARK_MM = 0.2;
export const LINE_MM = 0.25;
export const BOLD_LINE_MM = 0.6;

/** Height of one line of text in mm. */
export function lineHeightMm(sizePt: number): number {
  return sizePt * POINT_MM * LEADING;
}

/** From the top of a line to its baseline in mm, which centres the small letters in the line. */
export function baselineMm(sizePt: number): number {
  return sizePt * POINT_MM * 1.02;
}
