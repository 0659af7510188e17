/** A drawing as lines of text, one letter a cell, the topmost row first as a chart is read by eye. */
import type { Grid } from './types.ts';

/** What in lines is no drawing; `line` counts from 0, from the top. */
export type LineFault =
  | { readonly kind: 'uneven'; readonly line: number; readonly cells: number; readonly first: number }
  | { readonly kind: 'letter'; readonly line: number; readonly letter: string };

/** The drawing that the lines show, or the first that is wrong with them. `letters` gives the index of each letter. */
export function readLines(lines: readonly string[], letters: string): Grid | LineFault {
  const height = lines.length;
  const width = lines[0]?.length ?? 0;
  const cells = new Uint8Array(width * height);
  for (const [fromTop, line] of lines.entries()) {
    if (line.length !== width) return { kind: 'uneven', line: fromTop, cells: line.length, first: width };
    const row = height - 1 - fromTop;
    for (let column = 0; column < width; column++) {
      const index = letters.indexOf(line.charAt(column));
      if (index < 0) return { kind: 'letter', line: fromTop, letter: line.charAt(column) };
      cells[row * width + column] = index;
    }
  }
  return { width, height, cells };
}

/** Inverse of {@link readLines}. */
export function gridToText({ width, height, cells }: Grid, letters: string): string[] {
  const lines: string[] = [];
  // Kept work is written while one draws: a row at once, for letter by letter the largest drawing takes a second.
  const codes = new Uint16Array(width);
  for (let row = height - 1; row >= 0; row--) {
    for (let column = 0; column < width; column++) {
      codes[column] = letters.charCodeAt(cells[row * width + column] as number);
    }
    lines.push(String.fromCharCode(...codes));
  }
  return lines;
}
