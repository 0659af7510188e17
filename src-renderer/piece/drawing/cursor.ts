/** The stitch that is looked at: a frame round it, and a hair to the ruler and to the row counter. */
import type { StitchSpot } from '../stitch-spot.ts';
import { strokeFrame } from './frame.ts';
import { trace } from './group-marks.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';

export function drawCursor(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  spot: StitchSpot,
  look: Look,
  rulerY: number,
): void {
  const { left, top, width, height } = laid
    .at(spot.row)
    .pixels({ column: spot.needle, row: spot.row - 1, width: 1, height: 1 });
  context.lineWidth = 1;
  context.strokeStyle = look.accentOnMain;
  context.globalAlpha = 0.8;
  context.beginPath();
  trace(
    context,
    laid.wayDown(spot.row, top + height + 3, rulerY, (view) => {
      const cell = view.span(spot.needle, spot.needle);
      return Math.round(cell.left + view.columnWidth / 2) + 0.5;
    }),
  );
  context.stroke();
  context.globalAlpha = 1;
  const grow = Math.max(0, (8 - Math.min(width, height)) / 2);
  strokeFrame(context, look, () => context.rect(left - grow, top - grow, width + grow * 2, height + grow * 2));
}
