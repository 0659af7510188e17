/** Areas of one colour. */
import { cellAt, isInside } from '../grid.ts';
import type { Grid } from '../model.ts';
import type { Cell } from './cell.ts';

/** Indices of all cells of the colour of `seed` that it touches side by side; empty if it lies outside. */
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

/** Indices of all cells of one colour, anywhere. */
export function cellsOfColour(grid: Grid, colour: number): number[] {
  const found: number[] = [];
  grid.cells.forEach((cell, index) => {
    if (cell === colour) found.push(index);
  });
  return found;
}

/** Indices of the ground cells that touch the figure, at a side or a corner: an outline one cell wide around it. */
export function outlineCells(grid: Grid, ground: number): number[] {
  const { width, cells } = grid;
  const touchesFigure = (column: number, row: number): boolean => {
    for (let r = row - 1; r <= row + 1; r++) {
      for (let c = column - 1; c <= column + 1; c++) {
        if (isInside(grid, c, r) && cellAt(grid, c, r) !== ground) return true;
      }
    }
    return false;
  };
  const found: number[] = [];
  cells.forEach((cell, index) => {
    if (cell === ground && touchesFigure(index % width, Math.floor(index / width))) found.push(index);
  });
  return found;
}
