/** How large the cells of a chart are on paper, and over how many pages it goes. */
import type { CellBox } from '../../grid/index.ts';

/** Cells with a shorter side than this cannot be counted by eye while knitting. */
export const LEAST_CELL_MM = 3;
/** The widest cell; a tiny motif need not fill the page. */
export const MOST_CELL_MM = 6;

export interface ChartRoom {
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface ChartParts {
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** In the order of knitting: the bottom row of parts first, each row from the left. */
  readonly parts: readonly CellBox[];
}

/**
 * One part if the whole chart fits with cells that can be counted; otherwise as
 * few pages as its cells allow, cut after a multiple of ten where that costs
 * no page. `aspect` is a cell's width over its height.
 */
export function chartParts(columns: number, rows: number, aspect: number, room: ChartRoom): ChartParts {
  const onePage = cellWidthFor(columns, rows, aspect, room);
  if (Math.min(onePage, onePage / aspect) >= LEAST_CELL_MM) {
    return parts(columns, rows, columns, rows, onePage, aspect);
  }
  // The smallest cell that can be counted, unless the page has no room for even one.
  const least = Math.min(LEAST_CELL_MM * Math.max(1, aspect), room.widthMm, room.heightMm * aspect);
  const across = evenLength(columns, Math.max(1, Math.floor(room.widthMm / least + EPSILON)));
  const up = evenLength(rows, Math.max(1, Math.floor((room.heightMm * aspect) / least + EPSILON)));
  return parts(columns, rows, across, up, cellWidthFor(across, up, aspect, room), aspect);
}

const EPSILON = 1e-9;

function cellWidthFor(columns: number, rows: number, aspect: number, room: ChartRoom): number {
  // A gauge may make cells so flat that the least height asks for more.
  const most = Math.max(MOST_CELL_MM, LEAST_CELL_MM * aspect);
  return Math.min(most, room.widthMm / columns, (room.heightMm / rows) * aspect);
}

/** A length for each part, no longer than `most`: the parts as even as they come, rounded up to tens if that fits. */
function evenLength(total: number, most: number): number {
  if (total <= most) return total;
  const even = Math.ceil(total / Math.ceil(total / most));
  const tens = Math.ceil(even / 10) * 10;
  return tens <= most ? tens : even;
}

function parts(
  columns: number,
  rows: number,
  across: number,
  up: number,
  cellWidth: number,
  aspect: number,
): ChartParts {
  const found: CellBox[] = [];
  for (let row = 0; row < rows; row += up) {
    for (let column = 0; column < columns; column += across) {
      found.push({ column, row, width: Math.min(across, columns - column), height: Math.min(up, rows - row) });
    }
  }
  return { cellWidth, cellHeight: cellWidth / aspect, parts: found };
}
