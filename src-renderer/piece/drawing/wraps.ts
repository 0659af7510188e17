/** Wraps: a small loop, open towards the figure, on the needle it is made over. */
import type { PlanRow } from '@shared/plan/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import type { RowSpan } from './floats.ts';
import type { Look } from './look.ts';

const LEAST_RADIUS = 1.6;
const MOST_RADIUS = 20;

/** Radius of the loops: one edge is wrapped every other row at most, so a loop may be taller than its row. */
function loopRadius(view: Viewport): number {
  return Math.min(
    MOST_RADIUS,
    Math.max(LEAST_RADIUS, Math.min(view.cellHeight * (view.cellHeight < 8 ? 0.85 : 0.42), view.columnWidth * 0.7)),
  );
}

export function drawWraps(
  context: CanvasRenderingContext2D,
  view: Viewport,
  rows: readonly PlanRow[],
  look: Look,
  width: number,
  height: number,
  { first, last }: RowSpan,
): void {
  const seen = view.cellsIn(width, height);
  const radius = loopRadius(view);
  const opening = Math.PI / 3.2;
  context.strokeStyle = look.loop;
  context.lineWidth = radius < 3 ? 1 : radius < 10 ? 1.5 : 2.5;
  context.lineCap = 'round';
  context.beginPath();
  // Loops on one edge that would cover each other are left out.
  const lastAt = { left: Infinity, right: Infinity };
  for (let index = Math.max(first - 1, seen.row - 1); index < Math.min(last, seen.row + seen.height + 1); index++) {
    for (const { needle, edge } of (rows[index] as PlanRow).wraps) {
      const isLeft = edge === 'left';
      const y = view.top(index) + view.cellHeight / 2;
      if (radius === LEAST_RADIUS && Math.abs(lastAt[edge] - y) < 2 * radius && lastAt[edge] !== y) continue;
      lastAt[edge] = y;
      // The loop lies against the side of the needle that the figure is on.
      const x = isLeft ? view.left(needle + 1) - radius : view.left(needle) + radius;
      const from = isLeft ? opening : Math.PI + opening;
      const to = isLeft ? -opening : Math.PI - opening;
      context.moveTo(x + radius * Math.cos(from), y + radius * Math.sin(from));
      context.arc(x, y, radius, from, to);
    }
  }
  context.stroke();
  context.lineCap = 'butt';
}
