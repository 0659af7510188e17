/** Where copies are stepped, and where the last one is cut off. */
import { clippedCopies, type Measure } from '@shared/motif/repeat/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import { type MotifLook, strokeTwoTone } from './look.ts';

/** Copies lower than this many pixels have no room for lines between them. */
const LEAST_COPY = 12;
/** Dash and dot, as where paper is to be cut. */
const CUT_DASH = [12, 4, 2, 4];
/** Pixels that a cut runs on past the chart. */
const BEYOND = 10;

/** The stepped cell, faint, and the side of the one that stands on it: where the pattern begins again. */
export function drawStep(
  context: CanvasRenderingContext2D,
  view: Viewport,
  { step, repeat }: Measure,
  look: MotifLook,
): void {
  if (!step || step.rows * view.cellHeight < LEAST_COPY) return;
  const path = new Path2D();
  const left = view.left(0);
  const right = view.left(repeat.width);
  const upperEdge = (courses: number): number => view.top(courses * step.rows - 1);
  path.moveTo(left, upperEdge(1));
  path.lineTo(right, upperEdge(1));
  const x = view.left(step.shift);
  path.moveTo(x, upperEdge(1));
  path.lineTo(x, upperEdge(2));
  if (2 * step.rows < repeat.height) {
    path.moveTo(left, upperEdge(2));
    path.lineTo(right, upperEdge(2));
  }
  strokeTwoTone(context, look, path, []);
}

/** The edges at the right and at the top where whole copies end and a cut one begins. */
export function drawCuts(context: CanvasRenderingContext2D, view: Viewport, measure: Measure, look: MotifLook): void {
  const { width, height } = measure;
  const { stitches, rows } = clippedCopies(measure);
  if (stitches === 0 && rows === 0) return;
  const chart = view.pixels({ column: 0, row: 0, width, height });
  const path = new Path2D();
  if (stitches > 0) {
    const x = view.left(width - stitches);
    path.moveTo(x, chart.top + chart.height + BEYOND);
    path.lineTo(x, chart.top - BEYOND);
  }
  if (rows > 0) {
    const y = view.top(height - rows - 1);
    path.moveTo(chart.left - BEYOND, y);
    path.lineTo(chart.left + chart.width + BEYOND, y);
  }
  strokeTwoTone(context, look, path, CUT_DASH, { thick: 2 });
}
