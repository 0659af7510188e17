/**
 * How wide text is in the sheet's font, Source Sans 3.
 *
 * Advance widths alone: a backend that also kerns sets a line up to about one
 * in a hundred narrower, never so much wider that a line leaves its column.
 * Figures are tabular in this font as it comes.
 */
import type { Rich } from '../../words/index.ts';
import { POINT_MM } from '../paper.ts';
import { ENCODED_WIDTHS } from './widths.ts';

export const FONT_FAMILY = 'Source Sans 3';
export const STRONG_WEIGHT = 600;

/** Height of a capital in em; from the font. */
export const CAPITAL_EM = 0.66;

/** Widths in 1/1000 em, by code point. */
type Widths = ReadonlyMap<number, number>;

function decode(encoded: string): Widths {
  const widths = new Map<number, number>();
  for (const run of encoded.split('|')) {
    const [first = '', ...values] = run.split(' ');
    const start = Number.parseInt(first, 16);
    values.forEach((value, index) => widths.set(start + index, Number(value)));
  }
  return widths;
}

const REGULAR = decode(ENCODED_WIDTHS.regular);
const SEMIBOLD = decode(ENCODED_WIDTHS.semibold);

/** The same of ASCII, which most of a sheet is: a list is looked up several times as fast. */
const asciiOf = (widths: Widths): (number | undefined)[] => Array.from({ length: 128 }, (_, code) => widths.get(code));
const REGULAR_ASCII = asciiOf(REGULAR);
const SEMIBOLD_ASCII = asciiOf(SEMIBOLD);

/** True if the font has the character. */
export function hasCharacter(codePoint: number): boolean {
  return REGULAR.has(codePoint);
}

/** Advance width in 1/1000 em. Throws `RangeError` for a character the font lacks: see printable.ts. */
export function characterWidth(codePoint: number, isStrong: boolean): number {
  const width = (isStrong ? SEMIBOLD : REGULAR).get(codePoint);
  if (width === undefined) throw new RangeError(`The font has no U+${codePoint.toString(16)}`);
  return width;
}

/** Width of a line of text in mm. Throws `RangeError` for a character the font lacks. */
export function widthMm(text: string, sizePt: number, isStrong = false): number {
  const ascii = isStrong ? SEMIBOLD_ASCII : REGULAR_ASCII;
  let sum = 0;
  for (let at = 0; at < text.length; at++) {
    const known = ascii[text.charCodeAt(at)];
    if (known !== undefined) {
      sum += known;
      continue;
    }
    const codePoint = text.codePointAt(at) as number;
    sum += characterWidth(codePoint, isStrong);
    if (codePoint > 0xffff) at++;
  }
  return (sum / 1000) * sizePt * POINT_MM;
}

/** Width of a line with strong parts, in mm. */
export function richWidthMm(spans: Rich, sizePt: number): number {
  return spans.reduce((sum, span) => sum + widthMm(span.text, sizePt, span.isStrong), 0);
}
