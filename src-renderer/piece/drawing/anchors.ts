/** Anchors: a ring in the stitch, so that they are told from the motif's own by more than their colour. */
import type { PlanRow } from '@shared/plan/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import type { RowSpan } from './floats.ts';
import type { Look } from './look.ts';

/** Pixels of a stitch below which a ring would fill it, so that a dot stands for it; and below which nothing can. */
const LEAST_FOR_RING = 8;
const LEAST_CELL = 2;
const OF_CELL = 0.3;
const DOT_OF_CELL = 0.25;

export function drawAnchors(
  context: CanvasRenderingContext2D,
  view: Viewport,
  rows: readonly PlanRow[],
  look: Look,
  width: number,
  height: number,
  { first, last }: RowSpan,
): void {
  const cell = Math.min(view.cellHeight, view.columnWidth);
  if (cell < LEAST_CELL) return;
  const seen = view.cellsIn(width, height);
  const isRing = cell >= LEAST_FOR_RING;
  context.strokeStyle = look.anchor;
  context.fillStyle = look.anchor;
  context.lineWidth = Math.max(1, cell / 9);
  context.beginPath();
  for (let index = Math.max(first - 1, seen.row - 1); index < Math.min(last, seen.row + seen.height + 1); index++) {
    for (const needle of rows[index]?.anchors ?? []) {
      const { left, right } = view.span(needle, needle);
      const [x, y] = [(left + right) / 2, view.top(index) + view.cellHeight / 2];
      const radius = isRing ? cell * OF_CELL : Math.max(0.7, cell * DOT_OF_CELL);
      context.moveTo(x + radius, y);
      context.arc(x, y, radius, 0, 2 * Math.PI);
    }
  }
  if (isRing) context.stroke();
  else context.fill();
}
