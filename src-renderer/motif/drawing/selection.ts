/** The outline of selected or lifted cells: dashed, dark within light, seen on any yarn. */
import type { Viewport } from '../../canvas/index.ts';
import { holds, OPEN, type Cutting } from '../editing/cutting.ts';
import type { MotifLook } from './look.ts';

export function drawSelection(
  context: CanvasRenderingContext2D,
  view: Viewport,
  cutting: Cutting,
  look: MotifLook,
): void {
  const { cells, at } = cutting;
  context.save();
  context.beginPath();
  cells.cells.forEach((colour, index) => {
    if (colour === OPEN) return;
    const column = at.column + (index % cells.width);
    const row = at.row + Math.floor(index / cells.width);
    const left = view.left(column);
    const right = view.left(column + 1);
    const top = view.top(row);
    const bottom = view.top(row - 1);
    const side = (isOuter: boolean, x: number, y: number, toX: number, toY: number): void => {
      if (!isOuter) return;
      context.moveTo(x, y);
      context.lineTo(toX, toY);
    };
    side(!holds(cutting, { column: column - 1, row }), left, top, left, bottom);
    side(!holds(cutting, { column: column + 1, row }), right, top, right, bottom);
    side(!holds(cutting, { column, row: row + 1 }), left, top, right, top);
    side(!holds(cutting, { column, row: row - 1 }), left, bottom, right, bottom);
  });
  context.strokeStyle = look.paper;
  context.lineWidth = 4;
  context.stroke();
  context.setLineDash([6, 4]);
  context.strokeStyle = look.accent;
  context.lineWidth = 2;
  context.stroke();
  context.restore();
}
