/** Where a key takes the cell cursor; after the ARIA pattern for grids, up being up the chart. */
import { isInside, type Cell, type Grid } from '@shared/grid/index.ts';
import { cellOnMotif, type Following } from '../editing/following.ts';

/** Rows that Page Up and Page Down go. */
const PAGE = 10;

const ARROWS: { readonly [key: string]: readonly [columns: number, rows: number] } = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Columns to the right and rows up that an arrow key moves what is lifted; none for another key. */
export function stepOfArrow(key: string): readonly [columns: number, rows: number] {
  return ARROWS[key] ?? [0, 0];
}

/**
 * Where a stroke by an arrow key comes in again that goes over the edge of the
 * chart, as all copies follow; null where it does not.
 */
export function cellOverEdge(grid: Grid, cursor: Cell, key: string, following: Following): Cell | null {
  const [columns, rows] = stepOfArrow(key);
  const to = { column: cursor.column + columns, row: cursor.row + rows };
  if (!following.tile || isInside(grid, to.column, to.row)) return null;
  return cellOnMotif(grid, to, following);
}

/** The cell after the key, never past an edge; null for a key that does not move. */
export function cellAfterKey(
  { column, row }: Cell,
  key: { readonly key: string; readonly ctrlKey: boolean },
  { width, height }: Pick<Grid, 'width' | 'height'>,
): Cell | null {
  const to = (nextColumn: number, nextRow: number): Cell => ({
    column: Math.min(Math.max(nextColumn, 0), width - 1),
    row: Math.min(Math.max(nextRow, 0), height - 1),
  });
  switch (key.key) {
    case 'ArrowLeft':
      return to(column - 1, row);
    case 'ArrowRight':
      return to(column + 1, row);
    case 'ArrowUp':
      return to(column, row + 1);
    case 'ArrowDown':
      return to(column, row - 1);
    case 'PageUp':
      return to(column, row + PAGE);
    case 'PageDown':
      return to(column, row - PAGE);
    case 'Home':
      return key.ctrlKey ? to(0, 0) : to(0, row);
    case 'End':
      return key.ctrlKey ? to(width - 1, height - 1) : to(width - 1, row);
    default:
      return null;
  }
}
