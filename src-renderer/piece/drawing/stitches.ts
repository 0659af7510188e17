/** The edge of the piece, and, from near and where cells are drawn, a line between stitches and rows. */
import { lineSteps, type Viewport } from '../../canvas/index.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';
import { traceOutline, type Step } from './outline.ts';

export function drawOutline(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  steps: readonly Step[],
  look: Look,
  width: number,
  height: number,
  isRuled: boolean,
): void {
  for (const { first, last, view } of isRuled ? laid.parts : []) {
    const lines = lineSteps(Math.min(view.columnWidth, view.cellHeight));
    if (lines[0]?.every !== 1) continue;
    context.save();
    context.beginPath();
    traceOutline(
      context,
      laid,
      steps.filter(({ from }) => from + 1 >= first && from + 1 <= last),
    );
    context.clip();
    context.fillStyle = look.onMain;
    for (const { every, weight } of lines) {
      context.globalAlpha = 0.045 * weight;
      ruleStitches(context, view, every, width, height);
    }
    context.restore();
  }
  context.beginPath();
  traceOutline(context, laid, steps);
  context.lineWidth = 1;
  context.strokeStyle = look.ink;
  context.stroke();
}

function ruleStitches(
  context: CanvasRenderingContext2D,
  view: Viewport,
  every: number,
  width: number,
  height: number,
): void {
  const { column, row, width: columns, height: rows } = view.cellsIn(width, height);
  for (let at = Math.ceil(column / every) * every; at <= column + columns; at += every) {
    context.fillRect(Math.round(view.left(at)), 0, 1, height);
  }
  for (let at = Math.ceil(row / every) * every; at <= row + rows; at += every) {
    context.fillRect(0, Math.round(view.top(at - 1)), width, 1);
  }
}
