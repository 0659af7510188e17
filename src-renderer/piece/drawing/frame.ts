/** A mark that stands out on any yarn: the accent within a wider line of paper. */
import type { Look } from './look.ts';

/** Pixels that such a mark reaches beyond its path. */
export const FRAME_REACH = 2;

/** Strokes what `trace` draws twice, so that one of the two lines is seen whatever lies under them. */
export function strokeFrame(context: CanvasRenderingContext2D, look: Look, trace: () => void): void {
  for (const [colour, thickness] of [
    [look.raised, 2 * FRAME_REACH],
    [look.accent, 2],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = thickness;
    context.beginPath();
    trace();
    context.stroke();
  }
}
