/** Cells that break the near repeat: ringed, round among square cells, seen on any yarn. */
import type { Slip } from '@shared/motif/repeat/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import type { MotifLook } from './look.ts';

/** Pixels from the cell's longer half to its ring, and the smallest ring. */
const AWAY = 3;
const LEAST = 6;

/** Rings the slips that lie in a view of `width` × `height` pixels. */
export function drawSlips(
  context: CanvasRenderingContext2D,
  view: Viewport,
  slips: readonly Slip[],
  look: MotifLook,
  width: number,
  height: number,
): void {
  if (slips.length === 0) return;
  const radius = Math.max(LEAST, Math.max(view.cellWidth, view.cellHeight) / 2 + AWAY);
  const path = new Path2D();
  for (const { column, row } of slips) {
    const x = view.left(column) + view.cellWidth / 2;
    const y = view.top(row) + view.cellHeight / 2;
    if (x < -radius || y < -radius || x > width + radius || y > height + radius) continue;
    path.moveTo(x + radius, y);
    path.arc(x, y, radius, 0, 2 * Math.PI);
  }
  context.save();
  context.strokeStyle = look.paper;
  context.lineWidth = 6;
  context.stroke(path);
  context.strokeStyle = look.accent;
  context.lineWidth = 2.5;
  context.stroke(path);
  context.restore();
}
