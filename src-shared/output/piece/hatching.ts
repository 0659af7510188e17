/** What tells yarns apart on the piece: their marks as in the charts, of one size whatever the scale, and lines round those that lightness does not tell from the main one. */
import type { Fabric } from '../../fabric/index.ts';
import type { Yarn } from '../../project/index.ts';
import { markStrokes, toneOn, type YarnMark, type YarnMarks } from '../chart/marks.ts';
import { pathItem } from '../items.ts';
import type { Point, SheetItem } from '../model.ts';
import type { PartOnPaper, PieceView } from './view.ts';

/** From one mark to the next. */
const TILE_MM = 2;
const STROKE_MM = 0.12;
/** What a stroke leaves on the yarn, if shorter, is not drawn. */
const LEAST_MM = 0.3;

/** The marks of each yarn as one item: whatever the gauges, one beside the other over the whole piece. */
export function hatching(fabric: Fabric, yarns: readonly Yarn[], marks: YarnMarks, view: PieceView): SheetItem[] {
  const strokes = new Map<number, Point[][]>();
  const across = Math.ceil(view.widthMm / TILE_MM);
  for (const part of view.parts) {
    // What of a mark lies on another part is drawn with that one.
    const [from, to] = [part.y(part.last + 1) - view.top, part.y(part.first) - view.top];
    for (let line = Math.floor(from / TILE_MM); line * TILE_MM < to; line++) {
      for (let column = 0; column < across; column++) {
        const [x, y] = [view.left + (column + 0.5) * TILE_MM, view.top + (line + 0.5) * TILE_MM];
        for (const yarn of yarnsAround(fabric, part, x, y)) {
          const mark = marks.get(yarn);
          if (!mark) continue;
          const found = strokes.get(yarn) ?? [];
          strokes.set(yarn, found);
          found.push(...markOn(fabric, part, yarn, mark, x, y));
        }
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
  return alike.flatMap((yarn) => {
    const lines = view.parts.flatMap((part) => linesRound(fabric, yarn, part));
    if (lines.length === 0) return [];
    return [pathItem(lines, { paint: toneOn([yarns[yarn]?.colour ?? '#000000']), width: OUTLINE_MM })];
  });
}

/** Round the cells of a yarn on the rows of a part; where another part begins, cells do not stand one on the other. */
function linesRound(fabric: Fabric, yarn: number, part: PartOnPaper): Point[][] {
  if (Math.min(part.cellWidth, part.cellHeight) < LEAST_OUTLINED_MM) return [];
  const isIn = (column: number, row: number): boolean => yarnOn(fabric, part, column, row) === yarn;
  const [rows, below] = [part.last - part.first + 1, part.first - 1];
  const x = (column: number): number => part.x(fabric.first + column);
  const y = (line: number): number => part.y(part.first + line);
  return [
    ...edges(
      rows + 1,
      fabric.width,
      (line, column) => isIn(column, below + line) !== isIn(column, below + line - 1),
    ).map(([line, first, end]): Point[] => [
      [x(first), y(line)],
      [x(end), y(line)],
    ]),
    ...edges(
      fabric.width + 1,
      rows,
      (column, line) => isIn(column, below + line) !== isIn(column - 1, below + line),
    ).map(([column, first, end]): Point[] => [
      [x(column), y(first)],
      [x(column), y(end)],
    ]),
  ];
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

/** The yarns of the part's cells that a tile round (`x`, `y`) touches. */
function yarnsAround(fabric: Fabric, part: PartOnPaper, x: number, y: number): Set<number> {
  const found = new Set<number>();
  const half = TILE_MM / 2;
  const first = columnAt(fabric, part, x - half);
  const last = columnAt(fabric, part, x + half);
  const lowest = rowAt(part, y + half);
  const highest = rowAt(part, y - half);
  for (let row = Math.max(part.first - 1, lowest); row <= Math.min(part.last - 1, highest); row++) {
    for (let column = Math.max(0, first); column <= Math.min(fabric.width - 1, last); column++) {
      found.add(fabric.cells[row * fabric.width + column] as number);
    }
  }
  return found;
}

/** What of a mark's strokes lies on the part's cells of its yarn. */
function markOn(fabric: Fabric, part: PartOnPaper, yarn: number, mark: YarnMark, x: number, y: number): Point[][] {
  return markStrokes(mark, x, y, TILE_MM).flatMap((points) =>
    points.slice(1).flatMap((to, index) => stretchesOn(fabric, part, yarn, points[index] as Point, to)),
  );
}

/** The stretches of a line that lie on the part's cells of a yarn. */
function stretchesOn(fabric: Fabric, part: PartOnPaper, yarn: number, from: Point, to: Point): Point[][] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const at = (t: number): Point => [from[0] + t * dx, from[1] + t * dy];
  const cuts = [0, ...crossings(fabric, part, from, to), 1];
  const stretches: Point[][] = [];
  let start: number | null = null;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [t, next] = [cuts[i] as number, cuts[i + 1] as number];
    const [cx, cy] = at((t + next) / 2);
    const isOn = yarnOn(fabric, part, columnAt(fabric, part, cx), rowAt(part, cy)) === yarn;
    if (isOn) start ??= t;
    if (start !== null && (!isOn || i + 2 === cuts.length)) {
      const end = isOn ? next : t;
      if ((end - start) * length >= LEAST_MM) stretches.push([at(start), at(end)]);
      start = null;
    }
  }
  return stretches;
}

/** Where a line passes from one cell to another, as shares of its length, in order. */
function crossings(fabric: Fabric, part: PartOnPaper, from: Point, to: Point): number[] {
  const found: number[] = [];
  const between = (a: number, b: number, origin: number, size: number): void => {
    if (a === b) return;
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    for (let k = Math.ceil((low - origin) / size); origin + k * size < high; k++) {
      const t = (origin + k * size - a) / (b - a);
      if (t > 0 && t < 1) found.push(t);
    }
  };
  between(from[0], to[0], part.x(fabric.first), part.cellWidth);
  between(from[1], to[1], part.y(part.first), part.cellHeight);
  return found.sort((a, b) => a - b);
}

/** Column of the fabric; it need not have it. */
function columnAt(fabric: Fabric, part: PartOnPaper, x: number): number {
  return Math.floor((x - part.x(fabric.first)) / part.cellWidth);
}

/** Row of the fabric, from 0; it need not be of the part. */
function rowAt(part: PartOnPaper, y: number): number {
  return part.first - 1 + Math.floor((part.y(part.first) - y) / part.cellHeight);
}

/** The yarn of a cell of the part; null beside and beyond it. */
function yarnOn({ cells, width }: Fabric, { first, last }: PartOnPaper, column: number, row: number): number | null {
  if (column < 0 || column >= width || row < first - 1 || row >= last) return null;
  return cells[row * width + column] as number;
}
