/** Where a key takes the cell cursor; after the ARIA pattern for grids, up being up the chart. */
import type { Cell, Grid } from '@shared/grid/index.ts';

/** Rows that Page Up and Page Down go. */
const PAGE = 10;

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
