/** The cells that a stamp lays. Pure. */
import type { Cell, Grid } from '@shared/grid/index.ts';
import { OPEN } from './cutting.ts';

/** All cells of a drawing, or those of its figure alone, so that the ground under it stays as it is. */
export function stampOf(grid: Grid, ground: number, isFigureOnly: boolean): Grid {
  if (!isFigureOnly) return grid;
  return { ...grid, cells: grid.cells.map((cell) => (cell === ground ? OPEN : cell)) };
}

/** Where the lower left cell of `cells` stands when their middle is on `middle`. */
export function centredOn({ width, height }: Grid, { column, row }: Cell): Cell {
  return { column: column - Math.floor((width - 1) / 2), row: row - Math.floor((height - 1) / 2) };
}
