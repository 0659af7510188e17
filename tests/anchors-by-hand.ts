/** What anchors are, told again for tests: cells, floats and outlines looked at one by one. */
import type { Grid } from '@shared/grid/index.ts';

export interface Cell {
  readonly column: number;
  readonly row: number;
}

/** Cells of main that touch no figure, not at a corner either. Beside the drawing is nothing. */
export function freeCells({ width, height, cells }: Grid, main: number, row: number): Cell[] {
  const isFigure = (column: number, r: number): boolean =>
    column >= 0 && r >= 0 && column < width && r < height && cells[r * width + column] !== main;
  const free: Cell[] = [];
  for (let column = 0; column < width; column++) {
    let touches = false;
    for (const down of [-1, 0, 1]) for (const across of [-1, 0, 1]) touches ||= isFigure(column + across, row + down);
    if (!touches) free.push({ column, row });
  }
  return free;
}

/** Stitches by which the floats of `yarn` in a row are longer than they may be, with anchors on some of its cells. */
export function excessOf(
  { width, cells }: Grid,
  yarn: number,
  row: number,
  anchors: readonly Cell[],
  longest: number,
): number {
  const knitted = Array.from({ length: width }, (_, column) => cells[row * width + column] === yarn);
  const [first, last] = [knitted.indexOf(true), knitted.lastIndexOf(true)];
  for (const { column } of anchors) if (column > first && column < last) knitted[column] = true;
  let [excess, loose] = [0, 0];
  for (let column = first; column <= last && first !== -1; column++) {
    loose = knitted[column] ? 0 : loose + 1;
    if (loose > longest) excess++;
  }
  return excess;
}

/** Every choice of so many of them. */
export function* subsetsOf<T>(all: readonly T[], many: number, from = 0): Generator<T[], void> {
  if (many < 0) return;
  if (many === 0) {
    yield [];
    return;
  }
  for (let at = from; at <= all.length - many; at++) {
    for (const rest of subsetsOf(all, many - 1, at + 1)) yield [all[at] as T, ...rest];
  }
}
