/** The knitted cells of the piece, drawn as one shape a yarn. */
import { OUTSIDE, type Fabric } from '../../fabric/index.ts';
import type { Outline } from '../../piece/index.ts';
import type { Yarn } from '../../project/index.ts';
import type { CellRun, CellsItem, Point } from '../model.ts';
import { yarnPaint } from '../tones.ts';
import type { PartOnPaper, PieceView } from './view.ts';

/** Cells smaller than this on paper are drawn several as one. */
const SMALLEST_CELL_MM = 0.2;

/** The outline of the piece as a closed line: up its right edge, down its left one. */
export function outlinePoints(outline: Outline, view: PieceView): Point[] {
  const right: Point[] = [];
  const left: Point[] = [];
  for (let row = 1; row <= outline.rows; row++) {
    const from = outline.first[row - 1] as number;
    const to = (outline.last[row - 1] as number) + 1;
    const part = view.at(row);
    const isSame = row > part.first && outline.first[row - 2] === from && outline.last[row - 2] === to - 1;
    if (isSame) {
      right.pop();
      left.pop();
    } else {
      right.push([part.x(to), part.y(row)]);
      left.push([part.x(from), part.y(row)]);
    }
    right.push([part.x(to), part.y(row + 1)]);
    left.push([part.x(from), part.y(row + 1)]);
  }
  return [...right, ...left.reverse()];
}

/** Everything on the piece that is not knitted in `main`: one item for each yarn and gauge. */
export function contrastCells(fabric: Fabric, main: number, yarns: readonly Yarn[], view: PieceView): CellsItem[] {
  return view.parts.flatMap((part) => linesOf(part).flatMap((lines) => cellsOfLines(fabric, main, yarns, part, lines)));
}

/** Lines of `up` rows each, of the fabric's rows `from` (from 0) up to but not with `to`. */
interface Lines {
  readonly from: number;
  readonly to: number;
  readonly up: number;
}

/** The rows of a part, as many in a line as are drawn as one, and those left over at its top. */
function linesOf({ first, last, cellHeight }: PartOnPaper): Lines[] {
  const up = Math.max(1, Math.ceil(SMALLEST_CELL_MM / cellHeight));
  const left = (last - first + 1) % up;
  return [
    { from: first - 1, to: last - left, up },
    { from: last - left, to: last, up: left },
  ].filter(({ from, to }) => from < to);
}

function cellsOfLines(
  fabric: Fabric,
  main: number,
  yarns: readonly Yarn[],
  part: PartOnPaper,
  { from, to, up }: Lines,
): CellsItem[] {
  const across = Math.max(1, Math.ceil(SMALLEST_CELL_MM / part.cellWidth));
  const columns = Math.ceil(fabric.width / across);
  const lines = (to - from) / up;
  const runs = new Map<number, CellRun[]>();
  for (let line = 0; line < lines; line++) {
    let column = 0;
    while (column < columns) {
      const row = from + line * up;
      const yarn = yarnOfBlock(fabric, main, column * across, row, across, up);
      let end = column + 1;
      while (end < columns && yarnOfBlock(fabric, main, end * across, row, across, up) === yarn) end++;
      if (yarn !== main && yarn !== OUTSIDE) {
        const found = runs.get(yarn) ?? [];
        runs.set(yarn, found);
        found.push({ column, line: lines - 1 - line, length: end - column });
      }
      column = end;
    }
  }
  return [...runs]
    .sort(([a], [b]) => a - b)
    .map(([yarn, found]) => ({
      kind: 'cells',
      x: part.x(fabric.first),
      y: part.y(to + 1),
      cellWidth: across * part.cellWidth,
      cellHeight: up * part.cellHeight,
      fill: yarnPaint(yarns[yarn]?.colour ?? '#000000'),
      runs: found,
    }));
}

/** The yarn that most of a block of cells is knitted in; where two are even, not the main one. */
function yarnOfBlock(fabric: Fabric, main: number, column: number, row: number, across: number, up: number): number {
  if (across === 1 && up === 1) return fabric.cells[row * fabric.width + column] as number;
  const counts = new Map<number, number>();
  for (let r = row; r < row + up; r++) {
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
