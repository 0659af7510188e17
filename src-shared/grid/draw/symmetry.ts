/** Live symmetry: which other cells follow the one that is painted. */
import type { Grid } from '../model.ts';
import type { Cell } from './cell.ts';

/** `turning`: in the four quarter turns about the centre, as far as they lie on the grid. */
export type Symmetry = 'none' | 'left-right' | 'up-down' | 'both' | 'turning';

/** The cells that are painted together with `cell`, itself first; each once. */
export function symmetricCells(grid: Pick<Grid, 'width' | 'height'>, cell: Cell, symmetry: Symmetry): Cell[] {
  const { width, height } = grid;
  const { column, row } = cell;
  const leftRight = { column: width - 1 - column, row };
  const upDown = { column, row: height - 1 - row };
  const halfTurn = { column: width - 1 - column, row: height - 1 - row };
  switch (symmetry) {
    case 'none':
      return [cell];
    case 'left-right':
      return distinct([cell, leftRight]);
    case 'up-down':
      return distinct([cell, upDown]);
    case 'both':
      return distinct([cell, leftRight, upDown, halfTurn]);
    case 'turning':
      return distinct([cell, ...quarterTurns(width, height, cell)]);
  }
}

/** The other cells at a quarter, a half and three quarters of a turn about the centre of the grid. */
function quarterTurns(width: number, height: number, { column, row }: Cell): Cell[] {
  // In half cells from the centre, so that even sizes turn exactly; where one side is even and the
  // other odd, a quarter turn would land between cells, and only the half turn is left.
  const x = 2 * column + 1 - width;
  const y = 2 * row + 1 - height;
  const turned: Cell[] = [];
  for (const [tx, ty] of [
    [-y, x],
    [-x, -y],
    [y, -x],
  ] as const) {
    const c = (tx + width - 1) / 2;
    const r = (ty + height - 1) / 2;
    if (Number.isInteger(c) && Number.isInteger(r) && c >= 0 && r >= 0 && c < width && r < height) {
      turned.push({ column: c, row: r });
    }
  }
  return turned;
}

function distinct(cells: readonly Cell[]): Cell[] {
  return cells.filter(
    (cell, index) => cells.findIndex((other) => other.column === cell.column && other.row === cell.row) === index,
  );
}
