/** Which cells a drawing gesture touches. Pure geometry; colours are the caller's. */
import { cellAt, isInside, type Grid } from './grid.ts';

export interface Cell {
  readonly column: number;
  readonly row: number;
}

/**
 * The cells of a straight line from `a` to `b`, both included, one a step
 * along the longer axis (Bresenham 1965). The minor axis is rounded half away
 * from `a` towards the lower end, so that the line from `b` to `a` is the same.
 */
export function lineCells(a: Cell, b: Cell): Cell[] {
  const dx = b.column - a.column;
  const dy = b.row - a.row;
  const steps = Math.max(Math.abs(dx), Math.abs(dy));
  if (steps === 0) return [a];
  // Walk from one fixed end, whichever way the line was given.
  const flip = dx < 0 || (dx === 0 && dy < 0);
  const start = flip ? b : a;
  const stepX = (flip ? -dx : dx) / steps;
  const stepY = (flip ? -dy : dy) / steps;
  const cells = Array.from({ length: steps + 1 }, (_, i) => ({
    column: Math.round(start.column + i * stepX),
    row: Math.round(start.row + i * stepY),
  }));
  return flip ? cells.reverse() : cells;
}

/** All cells of the colour of `seed` that it touches side by side; empty if it lies outside. */
export function connectedCells(grid: Grid, seed: Cell): number[] {
  if (!isInside(grid, seed.column, seed.row)) return [];
  const colour = cellAt(grid, seed.column, seed.row);
  const { width, height, cells } = grid;
  const seen = new Uint8Array(cells.length);
  const found: number[] = [];
  const waiting = [seed.row * width + seed.column];
  seen[waiting[0] as number] = 1;
  const visit = (index: number): void => {
    if (seen[index] === 0 && cells[index] === colour) {
      seen[index] = 1;
      waiting.push(index);
    }
  };
  while (waiting.length > 0) {
    const index = waiting.pop() as number;
    found.push(index);
    const column = index % width;
    const row = (index - column) / width;
    if (column > 0) visit(index - 1);
    if (column < width - 1) visit(index + 1);
    if (row > 0) visit(index - width);
    if (row < height - 1) visit(index + width);
  }
  return found;
}
