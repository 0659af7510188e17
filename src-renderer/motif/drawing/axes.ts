/** Faint lines for what follows the pen: the axes of symmetry, and the seams between copies. */
import { placesInCopies, straightCopies, type CellBox, type Copies, type Grid } from '@shared/grid/index.ts';
import { clippedBox, type Viewport } from '../../canvas/index.ts';
import { copiesOn, type Following } from '../editing/following.ts';
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
  const chart: CellBox = { column: 0, row: 0, width: grid.width, height: grid.height };
  const seen = clippedBox(view.cellsIn(width, height), chart);
  if (!seen || (!tile && symmetry === 'none')) return;
  const copies = copiesOn(grid, following);
  const showsUp = copies.width * view.cellWidth >= LEAST_COPY;
  const showsAcross = copies.height * view.cellHeight >= LEAST_COPY;
  const seams = new Path2D();
  const axes = new Path2D();
  const up = (path: Path2D, column: number, from: number, to: number): void => {
    if (column <= 0 || column >= grid.width) return;
    path.moveTo(view.left(column), view.top(Math.max(from, seen.row) - 1));
    path.lineTo(view.left(column), view.top(Math.min(to, seen.row + seen.height) - 1));
  };
  const across = (path: Path2D, row: number, from: number, to: number): void => {
    if (row <= 0 || row >= grid.height) return;
    path.moveTo(view.left(Math.max(from, seen.column)), view.top(row - 1));
    path.lineTo(view.left(Math.min(to, seen.column + seen.width)), view.top(row - 1));
  };
  // Lines run through all copies where these stand straight, and copy by copy where they are moved.
  const wholeHeight = { ...straightCopies(copies), height: grid.height };
  const wholeWidth = { ...straightCopies(copies), width: grid.width };
  const areLow = copies.laid === 'courses' && !showsAcross;
  for (const { column, row, width, height } of showsUp && !areLow
    ? boxesIn(copies.laid === 'courses' ? copies : wholeHeight, seen)
    : []) {
    if (tile) up(seams, column, row, row + height);
    if (symmetry !== 'none' && symmetry !== 'up-down') up(axes, column + width / 2, row, row + height);
  }
  const areNarrow = copies.laid === 'columns' && !showsUp;
  for (const { column, row, width, height } of showsAcross && !areNarrow
    ? boxesIn(copies.laid === 'columns' ? copies : wholeWidth, seen)
    : []) {
    if (tile) across(seams, row, column, column + width);
    if (symmetry !== 'none' && symmetry !== 'left-right') across(axes, row + height / 2, column, column + width);
  }
  strokeTwoTone(context, look, seams, SEAM_DASH);
  strokeTwoTone(context, look, axes, AXIS_DASH);
}

/** The copies of which something is in view. */
function boxesIn(copies: Copies, seen: CellBox): CellBox[] {
  const { width, height } = copies;
  const places = [...placesInCopies(copies, { column: 0, row: 0, width, height }, seen)];
  return places.map((place) => ({ ...place, width, height }));
}
