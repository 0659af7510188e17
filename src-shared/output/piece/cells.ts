/** The knitted cells of the piece, drawn as one shape a yarn. */
import { OUTSIDE, type Fabric } from '../../fabric/index.ts';
import type { Outline } from '../../piece/index.ts';
import type { Yarn } from '../../project/index.ts';
import type { CellRun, CellsItem, Point } from '../model.ts';
import { yarnPaint } from '../tones.ts';
import type { PieceView } from './view.ts';

/** Cells smaller than this on paper are drawn several as one. */
const SMALLEST_CELL_MM = 0.2;

/** The outline of the piece as a closed line: up its right edge, down its left one. */
export function outlinePoints(outline: Outline, view: PieceView): Point[] {
  const right: Point[] = [];
  const left: Point[] = [];
  for (let row = 1; row <= outline.rows; row++) {
    const from = outline.first[row - 1] as number;
    const to = (outline.last[row - 1] as number) + 1;
    const isSame = row > 1 && outline.first[row - 2] === from && outline.last[row - 2] === to - 1;
    if (isSame) {
      right.pop();
      left.pop();
    } else {
      right.push([view.x(to), view.y(row)]);
      left.push([view.x(from), view.y(row)]);
    }
    right.push([view.x(to), view.y(row + 1)]);
    left.push([view.x(from), view.y(row + 1)]);
  }
  return [...right, ...left.reverse()];
}

/** Everything on the piece that is not knitted in `main`: one item for each yarn. */
export function contrastCells(fabric: Fabric, main: number, yarns: readonly Yarn[], view: PieceView): CellsItem[] {
  const across = Math.max(1, Math.ceil(SMALLEST_CELL_MM / view.cellWidth));
  const up = Math.max(1, Math.ceil(SMALLEST_CELL_MM / view.cellHeight));
  const columns = Math.ceil(fabric.width / across);
  const lines = Math.ceil(fabric.rows / up);
  const runs = new Map<number, CellRun[]>();
  for (let line = 0; line < lines; line++) {
    let column = 0;
    while (column < columns) {
      const yarn = yarnOfBlock(fabric, main, column * across, line * up, across, up);
      let end = column + 1;
      while (end < columns && yarnOfBlock(fabric, main, end * across, line * up, across, up) === yarn) end++;
      if (yarn !== main && yarn !== OUTSIDE) {
        const found = runs.get(yarn) ?? [];
        runs.set(yarn, found);
        found.push({ column, line: lines - 1 - line, length: end - column });
      }
      column = end;
    }
  }
  const cellHeight = up * view.cellHeight;
  return [...runs]
    .sort(([a], [b]) => a - b)
    .map(([yarn, found]) => ({
      kind: 'cells',
      x: view.x(fabric.first),
      y: view.y(1) - lines * cellHeight,
      cellWidth: across * view.cellWidth,
      cellHeight,
      fill: yarnPaint(yarns[yarn]?.colour ?? '#000000'),
      runs: found,
    }));
}

/** The yarn that most of a block of cells is knitted in; where two are even, not the main one. */
function yarnOfBlock(fabric: Fabric, main: number, column: number, row: number, across: number, up: number): number {
  if (across === 1 && up === 1) return fabric.cells[row * fabric.width + column] as number;
  const counts = new Map<number, number>();
  for (let r = row; r < Math.min(row + up, fabric.rows); r++) {
    for (let c = column; c < Math.min(column + across, fabric.width); c++) {
      const yarn = fabric.cells[r * fabric.width + c] as number;
      counts.set(yarn, (counts.get(yarn) ?? 0) + 1);
    }
  }
  let best = OUTSIDE;
  let most = 0;
  for (const [yarn, count] of counts) {
    if (count > most || (count === most && (best === main || best === OUTSIDE))) {
      best = yarn;
      most = count;
    }
  }
  return best;
}
