/** Text set in cells. */
import { makeGrid, type Grid } from '../../grid/index.ts';
import type { Glyph, PixelFont } from './font.ts';

export interface Setting {
  readonly font: PixelFont;
  /** Extra cells between letters, −1 … 10. */
  readonly letterSpacing: number;
  /** Extra rows between lines, −3 … 20. */
  readonly lineSpacing: number;
  readonly align: 'left' | 'centre' | 'right';
}

interface Placed {
  readonly glyph: Glyph;
  readonly column: number;
}

/** A text as it can be set. */
export interface SetText {
  /** A grid of 0 (none) and 1 (ink), trimmed to the ink; null where there is none. */
  readonly ink: Grid | null;
  /** The signs that the typeface lacks, each once, as they come in the text; the rest is set without them. */
  readonly missing: readonly string[];
}

/**
 * The ink of `text`, lines split at line breaks, without what the typeface does
 * not have. Reads from left to right on the chart as drawn. Throws `motif-too-large`.
 */
export function setText(text: string, setting: Setting): SetText {
  const lines = linesOf(text);
  const set = lines.map((line) => setLine(line, setting));
  const widths = set.map(inkWidth);
  const full = Math.max(...widths);
  const ink: { column: number; row: number }[] = [];
  set.forEach((letters, index) => {
    const slack = full - (widths[index] as number);
    const indent = setting.align === 'left' ? 0 : setting.align === 'right' ? slack : Math.floor(slack / 2);
    const baseLine = -index * (setting.font.lineHeight + setting.lineSpacing);
    for (const { glyph, column } of letters) {
      const [, left, bottom, width, rows] = glyph;
      rows.forEach((bits, r) => {
        for (let c = 0; c < width; c++) {
          if ((bits >> c) & 1) ink.push({ column: indent + column + left + c, row: baseLine + bottom + r });
        }
      });
    }
  });
  return { ink: trimmed(ink), missing: missingIn(text, setting.font) };
}

/** The signs of a text that a typeface lacks, each once, as they come in the text. */
export function missingIn(text: string, font: PixelFont): string[] {
  return [...new Set(linesOf(text).join(''))].filter((sign) => !Object.hasOwn(font.glyphs, sign));
}

function linesOf(text: string): string[] {
  return text.normalize('NFC').split(/\r?\n/);
}

/** Letters side by side from column 0 of the line's ink. */
function setLine(line: string, { font, letterSpacing }: Setting): Placed[] {
  const placed: Placed[] = [];
  let column = 0;
  for (const letter of line) {
    const glyph = Object.hasOwn(font.glyphs, letter) ? font.glyphs[letter] : undefined;
    if (!glyph) continue;
    placed.push({ glyph, column });
    column += glyph[0] + letterSpacing;
  }
  const first = placed.find(({ glyph }) => glyph[3] > 0);
  const start = first ? first.column + first.glyph[1] : 0;
  return placed.map((letter) => ({ ...letter, column: letter.column - start }));
}

function inkWidth(letters: readonly Placed[]): number {
  return Math.max(0, ...letters.map(({ glyph, column }) => (glyph[3] > 0 ? column + glyph[1] + glyph[3] : 0)));
}

function trimmed(ink: readonly { column: number; row: number }[]): Grid | null {
  if (ink.length === 0) return null;
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { column, row } of ink) {
    left = Math.min(left, column);
    right = Math.max(right, column);
    bottom = Math.min(bottom, row);
    top = Math.max(top, row);
  }
  const grid = makeGrid(right - left + 1, top - bottom + 1);
  for (const { column, row } of ink) grid.cells[(row - bottom) * grid.width + column - left] = 1;
  return grid;
}
