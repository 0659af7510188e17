/** Faint lines for what follows the pen: the axes of symmetry, and the seams between copies. */
import type { Grid } from '@shared/grid/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import { copySize, type Following } from '../editing/following.ts';
import { type MotifLook, strokeTwoTone } from './look.ts';

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
  const seams = new Path2D();
  const axes = new Path2D();
  const up = (path: Path2D, column: number): void => {
    const x = view.left(column);
    if (column <= 0 || column >= grid.width || x <= 0 || x >= width) return;
    path.moveTo(x, Math.max(0, chart.top));
    path.lineTo(x, Math.min(height, chart.top + chart.height));
  };
  const across = (path: Path2D, row: number): void => {
    const y = view.top(row - 1);
    if (row <= 0 || row >= grid.height || y <= 0 || y >= height) return;
    path.moveTo(Math.max(0, chart.left), y);
    path.lineTo(Math.min(width, chart.left + chart.width), y);
  };
  const showsUp = copy.width * view.cellWidth >= LEAST_COPY;
  const showsAcross = copy.height * view.cellHeight >= LEAST_COPY;
  for (let column = 0; showsUp && column < grid.width; column += copy.width) {
    if (tile) up(seams, column);
    if (symmetry !== 'none' && symmetry !== 'up-down') up(axes, column + copy.width / 2);
  }
  for (let row = 0; showsAcross && row < grid.height; row += copy.height) {
    if (tile) across(seams, row);
    if (symmetry !== 'none' && symmetry !== 'left-right') across(axes, row + copy.height / 2);
  }
  strokeTwoTone(context, look, seams, SEAM_DASH);
  strokeTwoTone(context, look, axes, AXIS_DASH);
}
