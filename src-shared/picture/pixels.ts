/**
 * A decoded picture, before it is a motif.
 *
 * `colours` holds one opaque colour a pixel as 0xrrggbb, row-major. Pictures
 * are stored from the top, so row 0 is the topmost here; `motif-picture.ts`
 * turns that round.
 */
import { MOST_COLUMNS, MOST_ROWS } from '../grid/index.ts';
import { problemError } from '../problem/index.ts';

export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly colours: Uint32Array;
}

export const WHITE = 0xffffff;
export const BLACK = 0x000000;

/** `#rrggbb` of 0xrrggbb. Throws `RangeError` for anything else: a project with such a colour could not be opened again. */
export function colourText(colour: number): string {
  if (!Number.isInteger(colour) || colour < BLACK || colour > WHITE) throw new RangeError(`${colour} is no colour`);
  return `#${colour.toString(16).padStart(6, '0')}`;
}

/**
 * `#rrggbb` of a colour as a person writes it: six or three hexadecimal digits
 * with or without the `#`, or the words black and white; null for anything else.
 */
export function parseColour(text: string): string | null {
  const written = text.trim().toLowerCase();
  if (written === 'white') return colourText(WHITE);
  if (written === 'black') return colourText(BLACK);
  const digits = /^#?([0-9a-f]{6}|[0-9a-f]{3})$/.exec(written)?.[1];
  if (digits === undefined) return null;
  return `#${digits.length === 6 ? digits : [...digits].map((digit) => digit + digit).join('')}`;
}

/** Called with the size a header states, before anything of that size is made. Throws `picture-too-large`. */
export function assertMotifSize(width: number, height: number): void {
  if (width > MOST_COLUMNS || height > MOST_ROWS) {
    throw problemError('picture-too-large', { width, height, mostWidth: MOST_COLUMNS, mostHeight: MOST_ROWS });
  }
}
