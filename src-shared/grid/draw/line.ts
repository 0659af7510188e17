/** Straight lines of cells. */
import type { Cell } from './cell.ts';

/**
 * The cells of a straight line from `a` to `b`, both included, one a step along
 * the longer axis, the nearest to the ideal line (as Bresenham 1965). Where the
 * line passes exactly between two cells, the one towards the nearer end is
 * taken; exactly in the middle there is no nearer end, and both are. So the
 * line is the same from either end, and its mirror image is the line of the
 * mirrored ends.
 */
export function lineCells(a: Cell, b: Cell): Cell[] {
  return walk(a, b, true);
}

/** A line one cell thin for joining two samples of a freehand stroke: in the exact middle the cell nearer `a` is taken. */
export function strokeCells(a: Cell, b: Cell): Cell[] {
  return walk(a, b, false);
}

function walk(a: Cell, b: Cell, takesBoth: boolean): Cell[] {
  const across = b.column - a.column;
  const up = b.row - a.row;
  const isSteep = Math.abs(up) > Math.abs(across);
  const steps = Math.max(Math.abs(across), Math.abs(up));
  const minor = Math.min(Math.abs(across), Math.abs(up));
  const cell = (step: number, sideways: number): Cell => {
    const [dx, dy] = isSteep ? [sideways, step] : [step, sideways];
    return { column: a.column + Math.sign(across) * dx, row: a.row + Math.sign(up) * dy };
  };
  const cells: Cell[] = [];
  for (let step = 0; step <= steps; step++) {
    if (2 * step === steps && minor % 2 === 1) {
      cells.push(cell(step, (minor - 1) / 2));
      if (takesBoth) cells.push(cell(step, (minor + 1) / 2));
    } else if (2 * step <= steps) cells.push(cell(step, nearestRoundingDown(minor, step, steps)));
    else cells.push(cell(step, minor - nearestRoundingDown(minor, steps - step, steps)));
  }
  return cells;
}

/** minor · step / steps to the nearest whole number, a half rounded down; 0 for no steps. */
function nearestRoundingDown(minor: number, step: number, steps: number): number {
  return steps === 0 ? 0 : Math.max(0, Math.ceil((2 * minor * step - steps) / (2 * steps)));
}
