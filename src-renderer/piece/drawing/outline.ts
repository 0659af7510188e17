/** The outline of a piece as corners, so that drawing costs the steps and not the rows. */
import type { Outline } from '@shared/piece/index.ts';
import type { Viewport } from '../../canvas/index.ts';

/** Rows (from 0) of one width: `from` up to and without `to`. */
export interface Step {
  readonly from: number;
  readonly to: number;
  readonly first: number;
  readonly last: number;
}

export function stepsOf(outline: Outline): Step[] {
  const steps: Step[] = [];
  let from = 0;
  for (let row = 1; row <= outline.rows; row++) {
    const isSame =
      row < outline.rows && outline.first[row] === outline.first[from] && outline.last[row] === outline.last[from];
    if (isSame) continue;
    steps.push({ from, to: row, first: outline.first[from] as number, last: outline.last[from] as number });
    from = row;
  }
  return steps;
}

/** Adds the closed outline to the context's path, up the right edge and down the left. */
export function traceOutline(context: CanvasRenderingContext2D, view: Viewport, steps: readonly Step[]): void {
  const lower = (row: number): number => view.top(row - 1);
  const [bottom] = steps;
  if (!bottom) return;
  context.moveTo(view.left(bottom.first), lower(bottom.from));
  for (const { from, to, last } of steps) {
    context.lineTo(view.left(last + 1), lower(from));
    context.lineTo(view.left(last + 1), lower(to));
  }
  for (const { from, to, first } of [...steps].reverse()) {
    context.lineTo(view.left(first), lower(to));
    context.lineTo(view.left(first), lower(from));
  }
  context.closePath();
}
