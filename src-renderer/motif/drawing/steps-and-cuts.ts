/** Where copies are stepped, and where the last one is cut off. */
import type { CellBox } from '@shared/grid/index.ts';
import { clippedCopies, type Block, type Measure, type Repeat } from '@shared/motif/repeat/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import { type MotifLook, strokeTwoTone } from './look.ts';

/** Copies lower than this many pixels have no room for lines between them. */
const LEAST_COPY = 12;
/** Dash and dot, as where paper is to be cut. */
const CUT_DASH = [12, 4, 2, 4];
/** Pixels that a cut runs on past the chart. */
const BEYOND = 10;

/**
 * The way to lay the plane with blocks that cuts the figure least, faint: the
 * borders of two courses of them, or of two columns, as far as these are drawn.
 */
export function drawStep(
  context: CanvasRenderingContext2D,
  view: Viewport,
  { blocks: [block], repeat }: Measure,
  look: MotifLook,
): void {
  if (!block || Math.min(block.width * view.cellWidth, block.height * view.cellHeight) < LEAST_COPY) return;
  const lines = block.laid === 'courses' ? courseLines(block, repeat) : columnLines(block, repeat);
  const path = new Path2D();
  for (const { column, row, width, height } of lines) {
    // A line between rows or columns: the lower left corner of its first cell.
    path.moveTo(view.left(column), view.top(row - 1));
    path.lineTo(view.left(column + width), view.top(row + height - 1));
  }
  strokeTwoTone(context, look, path, []);
}

/** The borders of two courses on one repeat: the lines between them, and one between blocks in either. */
export function courseLines({ width, height, step, column, row }: Block, repeat: Repeat): CellBox[] {
  const lines: CellBox[] = [];
  for (let course = 0; course < 3; course++) {
    const from = row + course * height;
    if (from > 0 && from < repeat.height) lines.push({ column: 0, row: from, width: repeat.width, height: 0 });
    const across = (column + course * step) % width;
    const upTo = Math.min(from + height, repeat.height);
    if (course < 2 && across > 0 && upTo > from)
      lines.push({ column: across, row: from, width: 0, height: upTo - from });
  }
  return lines;
}

/** The borders of two columns of blocks on one repeat: the lines between them, and one between blocks in either. */
export function columnLines({ width, height, step, column, row }: Block, repeat: Repeat): CellBox[] {
  const lines: CellBox[] = [];
  for (let course = 0; course < 3; course++) {
    const from = column + course * width;
    if (from > 0 && from < repeat.width) lines.push({ column: from, row: 0, width: 0, height: repeat.height });
    const up = (row + course * step) % height;
    const upTo = Math.min(from + width, repeat.width);
    if (course < 2 && up > 0 && upTo > from) lines.push({ column: from, row: up, width: upTo - from, height: 0 });
  }
  return lines;
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
