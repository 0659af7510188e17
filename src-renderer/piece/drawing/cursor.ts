/** The stitch that is looked at: a frame round it, and a hair to the ruler and to the row counter. */
import type { Viewport } from '../../canvas/index.ts';
import type { StitchSpot } from '../stitch-spot.ts';
import { strokeFrame } from './frame.ts';
import type { Look } from './look.ts';

export function drawCursor(
  context: CanvasRenderingContext2D,
  view: Viewport,
  spot: StitchSpot,
  look: Look,
  rulerY: number,
): void {
  const { left, top, width, height } = view.pixels({ column: spot.needle, row: spot.row - 1, width: 1, height: 1 });
  const middle = Math.round(left + width / 2) + 0.5;
  context.lineWidth = 1;
  context.strokeStyle = look.accentOnMain;
  context.globalAlpha = 0.8;
  context.beginPath();
  context.moveTo(middle, top + height + 3);
  context.lineTo(middle, rulerY);
  context.stroke();
  context.globalAlpha = 1;
  const grow = Math.max(0, (8 - Math.min(width, height)) / 2);
  strokeFrame(context, look, () => context.rect(left - grow, top - grow, width + grow * 2, height + grow * 2));
}
