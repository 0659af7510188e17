/** A place on a grid. */
export interface Cell {
  readonly column: number;
  readonly row: number;
}

/** A rectangle of cells: from (`column`, `row`), `width` × `height`. */
export interface CellBox {
  readonly column: number;
  readonly row: number;
  readonly width: number;
  readonly height: number;
}

/** The smallest box that holds both cells. */
export function boxBetween(a: Cell, b: Cell): CellBox {
  return {
    column: Math.min(a.column, b.column),
    row: Math.min(a.row, b.row),
    width: Math.abs(a.column - b.column) + 1,
    height: Math.abs(a.row - b.row) + 1,
  };
}
