/** Blank edge columns, hatched beside the figure: ground all the way up, part of the repeat, not seen. */
import type { CellBox, Grid } from '@shared/grid/index.ts';
import type { Blank } from '@shared/motif/repeat/index.ts';
import type { Viewport } from '../../canvas/index.ts';

/** Pixels from line to line. */
const SPACING = 8;

/** The blank columns at both edges as rectangles of cells, on the rows from the lowest to the uppermost of the figure. */
export function blankColumns({ width, height }: Pick<Grid, 'width' | 'height'>, blank: Blank): CellBox[] {
  const rows = { row: blank.bottom, height: height - blank.bottom - blank.top };
  const boxes = [
    { column: 0, width: blank.left, ...rows },
    { column: width - blank.right, width: blank.right, ...rows },
  ];
  return boxes.filter((box) => box.width > 0 && box.height > 0);
}

/** Hatches the part of `box` that lies in a view of `width` × `height` pixels. */
export function drawHatch(
  context: CanvasRenderingContext2D,
  view: Viewport,
  box: CellBox,
  colour: string,
  width: number,
  height: number,
): void {
  const pixels = view.pixels(box);
  const left = Math.max(0, pixels.left);
  const top = Math.max(0, pixels.top);
  const right = Math.min(width, pixels.left + pixels.width);
  const bottom = Math.min(height, pixels.top + pixels.height);
  if (right <= left || bottom <= top) return;
  context.save();
  context.beginPath();
  context.rect(left, top, right - left, bottom - top);
  context.clip();
  context.beginPath();
  // Lines x + y = constant, counted from the chart's corner so that they move with it.
  const origin = view.x + view.y;
  const first = Math.ceil((left + top - origin) / SPACING) * SPACING + origin;
  for (let sum = first; sum < right + bottom; sum += SPACING) {
    context.moveTo(left, sum - left);
    context.lineTo(right, sum - right);
  }
  context.lineWidth = 1.25;
  context.strokeStyle = colour;
  context.stroke();
  context.restore();
}
