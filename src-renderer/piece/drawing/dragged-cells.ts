/** The cells of a piece while groups of it are dragged, so that they are drawn as all others are. */
import { OUTSIDE } from '@shared/fabric/index.ts';
import type { CellBox, Grid } from '@shared/grid/index.ts';

/** A group as it lies in the grid, and where it is dragged to. */
export interface DraggedBox {
  readonly from: CellBox;
  /** Lower left cell of its new place. */
  readonly to: { readonly column: number; readonly row: number };
}

/** Plain main where the groups were, and the groups where they would be, as far as there is fabric. */
export function draggedGrid({ width, height, cells }: Grid, boxes: readonly DraggedBox[], main: number): Grid {
  const dragged = cells.slice();
  const put = (column: number, row: number, yarn: number): void => {
    if (column < 0 || column >= width || row < 0 || row >= height) return;
    const at = row * width + column;
    if (dragged[at] !== OUTSIDE) dragged[at] = yarn;
  };
  for (const { from } of boxes) {
    forEachCell(from, (across, up) => put(from.column + across, from.row + up, main));
  }
  for (const { from, to } of boxes) {
    forEachCell(from, (across, up) => {
      const column = from.column + across;
      const row = from.row + up;
      // What a shaped edge cut off is not known here; it stays main until the group is put down.
      const yarn = column >= 0 && column < width ? cells[row * width + column] : undefined;
      if (yarn !== undefined && yarn !== OUTSIDE) put(to.column + across, to.row + up, yarn);
    });
  }
  return { width, height, cells: dragged };
}

function forEachCell({ width, height }: CellBox, work: (across: number, up: number) => void): void {
  for (let up = 0; up < height; up++) for (let across = 0; across < width; across++) work(across, up);
}
