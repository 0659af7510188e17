/** Where the figure is, and which edge columns and rows are blank (ground all along). */
import { cellAt, type Grid } from '../../grid/index.ts';

/** Blank columns and rows on each side, as drawn. */
export interface Blank {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Blank edges of a grid, or null where there is no figure at all. */
export function blankEdges(grid: Grid, ground: number): Blank | null {
  const { width, height } = grid;
  let left = width;
  let right = -1;
  let bottom = -1;
  let top = -1;
  for (let row = 0; row < height; row++) {
    const start = row * width;
    let first = 0;
    while (first < width && grid.cells[start + first] === ground) first++;
    if (first === width) continue;
    let last = width - 1;
    while (cellAt(grid, last, row) === ground) last--;
    if (first < left) left = first;
    if (last > right) right = last;
    if (bottom < 0) bottom = row;
    top = row;
  }
  if (bottom < 0) return null;
  return { left, right: width - 1 - right, top: height - 1 - top, bottom };
}
