/** The cell under the pointer, and the keyboard's cell cursor. */
import type { Cell } from '@shared/grid/index.ts';
import { withBorder, type PixelBox, type Viewport } from '../../canvas/index.ts';
import type { MotifLook } from './look.ts';

/** A thin frame, dark within light, seen on any yarn; gives where it stands. */
export function drawHover(context: CanvasRenderingContext2D, view: Viewport, cell: Cell, look: MotifLook): PixelBox {
  return frame(context, view, cell, [
    [look.paper, 3],
    [look.ink, 1],
  ]);
}

/** A strong ring in the accent between two light ones, never smaller than can be seen; gives where it stands. */
export function drawCursor(context: CanvasRenderingContext2D, view: Viewport, cell: Cell, look: MotifLook): PixelBox {
  return frame(context, view, cell, [
    [look.paper, 7],
    [look.accent, 3],
  ]);
}

/** Smallest side of a frame in pixels. */
const LEAST = 8;

/** `strokes`: colour and thickness of each, the widest first. */
function frame(
  context: CanvasRenderingContext2D,
  view: Viewport,
  cell: Cell,
  strokes: readonly [widest: readonly [string, number], ...(readonly (readonly [string, number])[])],
): PixelBox {
  const { left, top, width, height } = view.pixels({ ...cell, width: 1, height: 1 });
  const spareX = Math.max(0, LEAST - width) / 2;
  const spareY = Math.max(0, LEAST - height) / 2;
  const box = {
    left: Math.round(left - spareX) + 0.5,
    top: Math.round(top - spareY) + 0.5,
    width: Math.round(width + 2 * spareX),
    height: Math.round(height + 2 * spareY),
  };
  for (const [colour, thick] of strokes) {
    context.strokeStyle = colour;
    context.lineWidth = thick;
    context.strokeRect(box.left, box.top, box.width, box.height);
  }
  return withBorder(box, strokes[0][1] / 2);
}
