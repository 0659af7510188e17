/** A drawing in cells, and how a file writes it. */
import { letters, refuse, z } from '../schema/index.ts';
import { gridToText, readLines } from './lines.ts';
import type { Grid } from './types.ts';

export type { Grid };

/** The largest motif: wider than any bed, taller than any garment. */
export const MOST_COLUMNS = 1000;
export const MOST_ROWS = 4000;

/** Palette indices a grid may hold, 0 … MOST_COLOURS - 1. */
export const MOST_COLOURS = 64;

/** One letter a cell in a file; index in this string = palette index. */
export const CELL_LETTERS = '.X23456789ABCDEFGHIJKLMNOPQRSTUVWYZabcdefghijklmnopqrstuvwxyz+-=';

/** The rows of a drawing as letters, topmost first, as the chart is read by eye. */
export const linesSchema = z.array(letters(MOST_COLUMNS)).check(z.minLength(1), z.maxLength(MOST_ROWS));

/** {@link linesSchema} in a file, a {@link Grid} inside the program. */
export const gridSchema = z.codec(linesSchema, z.custom<Grid>(), {
  decode: (lines, payload) => {
    const read = readLines(lines, CELL_LETTERS);
    if (!('kind' in read)) return read;
    const { line, ...fault } = read;
    if (fault.kind === 'uneven') refuse(payload, [line], 'line-uneven', { cells: fault.cells, first: fault.first });
    else refuse(payload, [line], 'letter-without-yarn', { letter: fault.letter });
    return z.NEVER;
  },
  encode: (grid) => gridToText(grid, CELL_LETTERS),
});
