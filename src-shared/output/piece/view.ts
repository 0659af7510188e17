/** The piece on paper: where a needle and a row come to lie. */
import { rowHeightMm, stitchWidthMm, type Outline, type Gauge } from '../../piece/index.ts';

/** Needles run from left to right as the knitter sees them, rows from the bottom up. */
export interface PieceView {
  /** Leftmost and rightmost needle of any row, as slots. */
  readonly first: number;
  readonly last: number;
  readonly rows: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** The drawing is one to this. */
  readonly scale: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Left edge of a needle. */
  x(slot: number): number;
  /** Lower edge of a row (1-based); the upper edge is that of the row above. */
  y(row: number): number;
}

/**
 * The largest drawing in true proportion that is no wider and no taller than
 * given, at a scale of one to a number with one decimal. Its top left corner is
 * at (0, 0); see {@link movedView}.
 */
export function pieceView(outline: Outline, gauge: Gauge, mostWidthMm: number, mostHeightMm: number): PieceView {
  let first = Infinity;
  let last = -Infinity;
  for (let row = 0; row < outline.rows; row++) {
    first = Math.min(first, outline.first[row] as number);
    last = Math.max(last, outline.last[row] as number);
  }
  const stitches = last - first + 1;
  const fullWidth = stitches * stitchWidthMm(gauge);
  const fullHeight = outline.rows * rowHeightMm(gauge);
  const scale = Math.max(1, Math.ceil(Math.max(fullWidth / mostWidthMm, fullHeight / mostHeightMm) * 10) / 10);
  const cellWidth = stitchWidthMm(gauge) / scale;
  const cellHeight = rowHeightMm(gauge) / scale;
  return at(0, 0, {
    first,
    last,
    rows: outline.rows,
    cellWidth,
    cellHeight,
    scale,
    widthMm: stitches * cellWidth,
    heightMm: outline.rows * cellHeight,
  });
}

/** The same drawing with its top left corner at (`left`, `top`). */
export function movedView(view: PieceView, left: number, top: number): PieceView {
  return at(left, top, view);
}

function at(left: number, top: number, view: Omit<PieceView, 'x' | 'y'>): PieceView {
  return {
    ...view,
    x: (slot) => left + (slot - view.first) * view.cellWidth,
    y: (row) => top + view.heightMm - (row - 1) * view.cellHeight,
  };
}
