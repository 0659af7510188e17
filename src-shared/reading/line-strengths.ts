/** How dark lines are: usually, and where they fade across a sheet. */
import type { Bounds, CellSides } from './cell-sides.ts';
import { nthOf } from './nth.ts';

/** Columns and rows to either side whose lines tell how strong lines are there. */
const STRONG_AROUND = 3;

/** Around the outermost line half of the sides lie beside the chart; the strong ones tell. */
const STRONG = 0.8;

/** Lines may fade to this share of what they usually are. */
const FADED = 0.35;

/** How strong lines are at a column and a row: they may fade across the sheet. */
export function strengths(
  { columns, rows, upright, level, within, filled }: CellSides,
  core: Bounds,
  typical: number,
): (column: number, row: number) => number {
  const [fromRow, toRow] = [Math.max(0, core.top - within.top), Math.min(rows, core.bottom - within.top)];
  const [fromColumn, toColumn] = [Math.max(0, core.left - within.left), Math.min(columns, core.right - within.left)];
  const shareOf = (shares: number[]): number => nthOf(shares, Math.floor(STRONG * shares.length)) ?? 0;
  const gathered = (left: number, right: number, top: number, bottom: number): number => {
    const shares: number[] = [];
    for (let row = Math.max(0, top); row < Math.min(rows, bottom); row++) {
      for (let column = Math.max(0, left); column < Math.min(columns, right); column++) {
        if (filled[row * columns + column] === 1) continue;
        shares.push(upright[row * (columns + 1) + column] as number, level[row * columns + column] as number);
      }
    }
    return shareOf(shares);
  };
  const usual = Math.max(1, gathered(fromColumn, toColumn, fromRow, toRow));
  const ofColumn = Array.from({ length: columns + 1 }, (_, i) =>
    gathered(i - STRONG_AROUND, i + STRONG_AROUND + 1, fromRow, toRow),
  );
  const ofRow = Array.from({ length: rows + 1 }, (_, i) =>
    gathered(fromColumn, toColumn, i - STRONG_AROUND, i + STRONG_AROUND + 1),
  );
  return (column, row) => {
    const share = ((ofColumn[column] as number) / usual) * ((ofRow[row] as number) / usual);
    return typical * Math.max(FADED, Math.min(1, share));
  };
}

/** Of the sides of cells in the middle so many show less than what they are said to show usually. */
const TYPICAL = 0.6;

/** What sides of cells in the middle of the lattice usually show. */
export function typicalOf({ columns, rows, upright, level, within, filled }: CellSides, core: Bounds): number {
  const shares: number[] = [];
  const isFilled = (column: number, row: number): boolean => filled[row * columns + column] === 1;
  for (let row = Math.max(1, core.top - within.top); row < Math.min(rows, core.bottom - within.top); row++) {
    for (
      let column = Math.max(1, core.left - within.left);
      column < Math.min(columns, core.right - within.left);
      column++
    ) {
      const here = isFilled(column, row);
      if (!here || !isFilled(column - 1, row)) shares.push(upright[row * (columns + 1) + column] as number);
      if (!here || !isFilled(column, row - 1)) shares.push(level[row * columns + column] as number);
    }
  }
  shares.sort((a, b) => a - b);
  return Math.max(4, shares[Math.floor(TYPICAL * shares.length)] ?? 0);
}
