/** A typeface drawn in cells. */

/**
 * `[advance, left, bottom, width, rows]`: cells to the next letter; the first
 * inked column and the lowest inked row (0 is the base line); width of the ink;
 * and one number a row from the bottom up, bit *c* being column *c* of the ink.
 */
export type Glyph = readonly [advance: number, left: number, bottom: number, width: number, rows: readonly number[]];

export interface PixelFont {
  readonly id: string;
  readonly name: string;
  /** Rows from one base line to the next. */
  readonly lineHeight: number;
  readonly glyphs: Readonly<Record<string, Glyph>>;
}
