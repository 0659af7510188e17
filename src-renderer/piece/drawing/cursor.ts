/** The stitch that is looked at: a frame round it, and a hair down to the ruler. */
import type { StitchSpot } from '../stitch-spot.ts';
import { boxAround, withBorder, type PixelBox } from '../../canvas/index.ts';
import { FRAME_REACH, strokeFrame } from './frame.ts';
import { trace } from './group-marks.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';

/** Gives where it has drawn, in pixels of the view. */
export function drawCursor(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  spot: StitchSpot,
  look: Look,
  rulerY: number,
): PixelBox[] {
  const { left, top, width, height } = laid
    .at(spot.row)
    .pixels({ column: spot.needle, row: spot.row - 1, width: 1, height: 1 });
  context.lineWidth = 1;
  context.strokeStyle = look.accentOnMain;
  context.globalAlpha = 0.8;
  context.beginPath();
  const hair = laid.wayDown(spot.row, top + height + 3, rulerY, (view) => {
    const cell = view.span(spot.needle, spot.needle);
    return Math.round(cell.left + view.columnWidth / 2) + 0.5;
  });
  trace(context, hair);
  context.stroke();
  context.globalAlpha = 1;
  const grow = Math.max(0, (8 - Math.min(width, height)) / 2);
  const frame = withBorder({ left, top, width, height }, grow);
  strokeFrame(context, look, () => context.rect(frame.left, frame.top, frame.width, frame.height));
  return [withBorder(frame, FRAME_REACH), withBorder(boxAround(hair), 1)];
}
