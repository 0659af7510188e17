/** The cell under the pointer, and the keyboard's cell cursor. */
import type { Cell } from '@shared/grid/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import type { MotifLook } from './look.ts';

/** A thin frame, dark within light, seen on any yarn. */
export function drawHover(context: CanvasRenderingContext2D, view: Viewport, cell: Cell, look: MotifLook): void {
  frame(context, view, cell, look.paper, 3);
  frame(context, view, cell, look.ink, 1);
}

/** A strong ring in the accent between two light ones, never smaller than can be seen. */
export function drawCursor(context: CanvasRenderingContext2D, view: Viewport, cell: Cell, look: MotifLook): void {
  frame(context, view, cell, look.paper, 7);
  frame(context, view, cell, look.accent, 3);
}

/** Smallest side of a frame in pixels. */
const LEAST = 8;

function frame(context: CanvasRenderingContext2D, view: Viewport, cell: Cell, colour: string, thick: number): void {
  const { left, top, width, height } = view.pixels({ ...cell, width: 1, height: 1 });
  const spareX = Math.max(0, LEAST - width) / 2;
  const spareY = Math.max(0, LEAST - height) / 2;
  context.strokeStyle = colour;
  context.lineWidth = thick;
  context.strokeRect(
    Math.round(left - spareX) + 0.5,
    Math.round(top - spareY) + 0.5,
    Math.round(width + 2 * spareX),
    Math.round(height + 2 * spareY),
  );
}
