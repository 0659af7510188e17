/** Faint lines for what follows the pen: the axes of symmetry, and the seams between copies. */
import type { Grid } from '@shared/grid/index.ts';
import type { Viewport } from '../../ui/cells/index.ts';
import { copySize, type Following } from '../editing/following.ts';
import type { MotifLook } from './look.ts';

const SEAM_DASH = [2, 4];
const AXIS_DASH = [8, 4];
/** Pixels below which copies are too close for lines between them. */
const LEAST_COPY = 24;

/** Draws them over the chart, in a view of `width` × `height` pixels. */
export function drawAxes(
  context: CanvasRenderingContext2D,
  view: Viewport,
  grid: Pick<Grid, 'width' | 'height'>,
  following: Following,
  look: MotifLook,
  width: number,
  height: number,
): void {
  const { symmetry, tile } = following;
  const copy = copySize(grid, following);
  const chart = view.pixels({ column: 0, row: 0, width: grid.width, height: grid.height });
  context.save();
  const line = (x: number, y: number, toX: number, toY: number, dash: number[]): void =>
    twoTone(context, look, dash, x, y, toX, toY);
  const up = (column: number, dash: number[]): void => {
    const x = view.left(column);
    if (column > 0 && column < grid.width && x > 0 && x < width) {
      line(x, Math.max(0, chart.top), x, Math.min(height, chart.top + chart.height), dash);
    }
  };
  const across = (row: number, dash: number[]): void => {
    const y = view.top(row - 1);
    if (row > 0 && row < grid.height && y > 0 && y < height) {
      line(Math.max(0, chart.left), y, Math.min(width, chart.left + chart.width), y, dash);
    }
  };
  const showsUp = copy.width * view.cellWidth >= LEAST_COPY;
  const showsAcross = copy.height * view.cellHeight >= LEAST_COPY;
  for (let column = 0; showsUp && column < grid.width; column += copy.width) {
    if (tile) up(column, SEAM_DASH);
    if (symmetry !== 'none' && symmetry !== 'up-down') up(column + copy.width / 2, AXIS_DASH);
  }
  for (let row = 0; showsAcross && row < grid.height; row += copy.height) {
    if (tile) across(row, SEAM_DASH);
    if (symmetry !== 'none' && symmetry !== 'left-right') across(row + copy.height / 2, AXIS_DASH);
  }
  context.restore();
}

/** A dashed line seen on light and dark yarns alike. */
function twoTone(
  context: CanvasRenderingContext2D,
  look: MotifLook,
  dash: number[],
  x: number,
  y: number,
  toX: number,
  toY: number,
): void {
  for (const { colour, thick } of [
    { colour: look.paper, thick: 3 },
    { colour: look.accent, thick: 1.25 },
  ]) {
    context.beginPath();
    context.setLineDash(dash);
    context.globalAlpha = 0.8;
    context.strokeStyle = colour;
    context.lineWidth = thick;
    context.moveTo(x, y);
    context.lineTo(toX, toY);
    context.stroke();
  }
}
