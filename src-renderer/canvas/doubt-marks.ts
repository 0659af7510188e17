/** Marks of doubtful cells: a diamond in each, dark within light, so that shape tells it and it is seen on any yarn. */
import type { Cell } from '@shared/grid/index.ts';
import { strokeCased, type MarkLook } from './stroke-cased.ts';
import type { Viewport } from './viewport.ts';

/** Share of a cell's shorter side from the middle of a diamond to its corners, and the fewest pixels. */
const SHARE = 0.36;
const LEAST = 3.5;

/** Draws those that lie in a view of `width` × `height` pixels. */
export function drawDoubtMarks(
  context: CanvasRenderingContext2D,
  view: Viewport,
  cells: readonly Cell[],
  look: MarkLook,
  width: number,
  height: number,
): void {
  if (cells.length === 0) return;
  const reach = Math.max(LEAST, Math.min(view.columnWidth, view.cellHeight) * SHARE);
  context.beginPath();
  for (const { column, row } of cells) {
    const x = view.left(column) + view.cellWidth / 2;
    const y = view.top(row) + view.cellHeight / 2;
    if (x < -reach || y < -reach || x > width + reach || y > height + reach) continue;
    context.moveTo(x, y - reach);
    context.lineTo(x + reach, y);
    context.lineTo(x, y + reach);
    context.lineTo(x - reach, y);
    context.closePath();
  }
  strokeCased(context, look, 1.5);
}
