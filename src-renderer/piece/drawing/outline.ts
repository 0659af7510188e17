/** The outline of a piece as corners, so that drawing costs the steps and not the rows. */
import type { Outline } from '@shared/piece/index.ts';
import type { LaidView } from './laid-view.ts';

/** Rows (from 0) of one width and one gauge: `from` up to and without `to`. */
export interface Step {
  readonly from: number;
  readonly to: number;
  readonly first: number;
  readonly last: number;
}

/** Asked with each frame, and the same as long as the piece is. */
const known = new WeakMap<Outline, { readonly starts: string; readonly steps: readonly Step[] }>();

/** `starts` are rows (1-based) at which a part of another gauge begins. */
export function stepsOf(outline: Outline, starts: readonly number[] = []): readonly Step[] {
  const like = known.get(outline);
  const key = starts.join();
  if (like?.starts === key) return like.steps;
  const steps = stepsIn(outline, starts);
  known.set(outline, { starts: key, steps });
  return steps;
}

function stepsIn(outline: Outline, starts: readonly number[]): Step[] {
  const steps: Step[] = [];
  let from = 0;
  for (let row = 1; row <= outline.rows; row++) {
    const isSame =
      row < outline.rows &&
      !starts.includes(row + 1) &&
      outline.first[row] === outline.first[from] &&
      outline.last[row] === outline.last[from];
    if (isSame) continue;
    steps.push({ from, to: row, first: outline.first[from] as number, last: outline.last[from] as number });
    from = row;
  }
  return steps;
}

/** Adds the closed outline to the context's path, up the right edge and down the left. */
export function traceOutline(context: CanvasRenderingContext2D, laid: LaidView, steps: readonly Step[]): void {
  const [bottom] = steps;
  if (!bottom) return;
  const lowest = laid.at(bottom.to);
  context.moveTo(lowest.left(bottom.first), lowest.top(bottom.from - 1));
  for (const { from, to, last } of steps) {
    const view = laid.at(to);
    context.lineTo(view.left(last + 1), view.top(from - 1));
    context.lineTo(view.left(last + 1), view.top(to - 1));
  }
  for (const { from, to, first } of [...steps].reverse()) {
    const view = laid.at(to);
    context.lineTo(view.left(first), view.top(to - 1));
    context.lineTo(view.left(first), view.top(from - 1));
  }
  context.closePath();
}
