/** What tells yarns apart on the piece: their marks as in the charts, of one size whatever the scale, and lines round those that lightness does not tell from the main one. */
import type { Fabric } from '../../fabric/index.ts';
import type { Yarn } from '../../project/index.ts';
import { markStrokes, toneOn, type YarnMark, type YarnMarks } from '../chart/marks.ts';
import { pathItem } from '../items.ts';
import type { Point, SheetItem } from '../model.ts';
import type { PieceView } from './view.ts';

/** From one mark to the next. */
const TILE_MM = 2;
const STROKE_MM = 0.12;
/** What a stroke leaves on the yarn, if shorter, is not drawn. */
const LEAST_MM = 0.3;

/** The marks of each yarn as one item. */
export function hatching(fabric: Fabric, yarns: readonly Yarn[], marks: YarnMarks, view: PieceView): SheetItem[] {
  const strokes = new Map<number, Point[][]>();
  const [left, top] = [view.x(fabric.first), view.y(fabric.rows + 1)];
  const across = Math.ceil((fabric.width * view.cellWidth) / TILE_MM);
  const up = Math.ceil((fabric.rows * view.cellHeight) / TILE_MM);
  for (let line = 0; line < up; line++) {
    for (let column = 0; column < across; column++) {
      const [x, y] = [left + (column + 0.5) * TILE_MM, top + (line + 0.5) * TILE_MM];
      for (const yarn of yarnsAround(fabric, view, x, y)) {
        const mark = marks.get(yarn);
        if (!mark) continue;
        const found = strokes.get(yarn) ?? [];
        strokes.set(yarn, found);
        found.push(...markOn(fabric, view, yarn, mark, x, y));
      }
    }
  }
  return [...strokes]
    .filter(([, lines]) => lines.length > 0)
    .sort(([a], [b]) => a - b)
    .map(([yarn, lines]) => pathItem(lines, { paint: toneOn([yarns[yarn]?.colour ?? '#000000']), width: STROKE_MM }));
}

/** Cells smaller than this are not told apart on paper, however they are drawn. */
const LEAST_OUTLINED_MM = 0.35;
const OUTLINE_MM = 0.1;

/** Round the cells of each of some yarns, which lightness does not tell from the main one, a line that does. */
export function outlines(
  fabric: Fabric,
  yarns: readonly Yarn[],
  alike: readonly number[],
  view: PieceView,
): SheetItem[] {
  if (Math.min(view.cellWidth, view.cellHeight) < LEAST_OUTLINED_MM) return [];
  return alike.flatMap((yarn) => {
    const isIn = (column: number, row: number): boolean => yarnAt(fabric, column, row) === yarn;
    const lines = [
      ...edges(fabric.rows + 1, fabric.width, (row, column) => isIn(column, row) !== isIn(column, row - 1)).map(
        ([row, first, end]): Point[] => [
          [view.x(fabric.first + first), view.y(row + 1)],
          [view.x(fabric.first + end), view.y(row + 1)],
        ],
      ),
      ...edges(fabric.width + 1, fabric.rows, (column, row) => isIn(column, row) !== isIn(column - 1, row)).map(
        ([column, first, end]): Point[] => [
          [view.x(fabric.first + column), view.y(first + 1)],
          [view.x(fabric.first + column), view.y(end + 1)],
        ],
      ),
    ];
    if (lines.length === 0) return [];
    return [pathItem(lines, { paint: toneOn([yarns[yarn]?.colour ?? '#000000']), width: OUTLINE_MM })];
  });
}

/** The stretches of each line along which something is true, from `first` up to but not with `end`. */
function edges(
  lines: number,
  length: number,
  isEdge: (line: number, at: number) => boolean,
): [line: number, first: number, end: number][] {
  const found: [number, number, number][] = [];
  for (let line = 0; line < lines; line++) {
    for (let at = 0; at < length; at++) {
      if (!isEdge(line, at)) continue;
      const last = found.at(-1);
      if (last?.[0] === line && last[2] === at) last[2] = at + 1;
      else found.push([line, at, at + 1]);
    }
  }
  return found;
}

/** The yarns of the cells that a tile round (`x`, `y`) touches. */
function yarnsAround(fabric: Fabric, view: PieceView, x: number, y: number): Set<number> {
  const found = new Set<number>();
  const half = TILE_MM / 2;
  const first = columnAt(fabric, view, x - half);
  const last = columnAt(fabric, view, x + half);
  const lowest = rowAt(view, y + half);
  const highest = rowAt(view, y - half);
  for (let row = Math.max(0, lowest); row <= Math.min(fabric.rows - 1, highest); row++) {
    for (let column = Math.max(0, first); column <= Math.min(fabric.width - 1, last); column++) {
      found.add(fabric.cells[row * fabric.width + column] as number);
    }
  }
  return found;
}

/** What of a mark's strokes lies on the cells of its yarn. */
function markOn(fabric: Fabric, view: PieceView, yarn: number, mark: YarnMark, x: number, y: number): Point[][] {
  return markStrokes(mark, x, y, TILE_MM).flatMap((points) =>
    points.slice(1).flatMap((to, index) => partsOn(fabric, view, yarn, points[index] as Point, to)),
  );
}

/** The parts of a line that lie on cells of a yarn. */
function partsOn(fabric: Fabric, view: PieceView, yarn: number, from: Point, to: Point): Point[][] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const at = (t: number): Point => [from[0] + t * dx, from[1] + t * dy];
  const cuts = [0, ...crossings(fabric, view, from, to), 1];
  const parts: Point[][] = [];
  let start: number | null = null;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [t, next] = [cuts[i] as number, cuts[i + 1] as number];
    const [cx, cy] = at((t + next) / 2);
    const isOn = yarnAt(fabric, columnAt(fabric, view, cx), rowAt(view, cy)) === yarn;
    if (isOn) start ??= t;
    if (start !== null && (!isOn || i + 2 === cuts.length)) {
      const end = isOn ? next : t;
      if ((end - start) * length >= LEAST_MM) parts.push([at(start), at(end)]);
      start = null;
    }
  }
  return parts;
}

/** Where a line passes from one cell to another, as shares of its length, in order. */
function crossings(fabric: Fabric, view: PieceView, from: Point, to: Point): number[] {
  const found: number[] = [];
  const between = (a: number, b: number, origin: number, size: number): void => {
    if (a === b) return;
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    for (let k = Math.ceil((low - origin) / size); origin + k * size < high; k++) {
      const t = (origin + k * size - a) / (b - a);
      if (t > 0 && t < 1) found.push(t);
    }
  };
  between(from[0], to[0], view.x(fabric.first), view.cellWidth);
  between(from[1], to[1], view.y(1), view.cellHeight);
  return found.sort((a, b) => a - b);
}

function columnAt(fabric: Fabric, view: PieceView, x: number): number {
  return Math.floor((x - view.x(fabric.first)) / view.cellWidth);
}

function rowAt(view: PieceView, y: number): number {
  return Math.floor((view.y(1) - y) / view.cellHeight);
}

function yarnAt({ cells, width, rows }: Fabric, column: number, row: number): number | null {
  return column < 0 || column >= width || row < 0 || row >= rows ? null : (cells[row * width + column] as number);
}
