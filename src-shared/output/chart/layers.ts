/** The layers of a chart: cells, marks, hatching, lines, brackets. */
import { contrastRatio } from '../../colour/index.ts';
import { cellAt, type CellBox } from '../../grid/index.ts';
import { pathItem, rectangleItem } from '../items.ts';
import type { CellRun, Point, SheetItem, Stroke } from '../model.ts';
import { yarnPaint, type Paint, type Tone } from '../tones.ts';
import { markStrokes, toneOn, TOLD_APART, type YarnMarks } from './marks.ts';
import { yarnsInUse, type ChartSubject } from './subject.ts';

/**
 * Where a part of a chart lies. Lengths are in mm on a sheet and in pixels in
 * an image; nothing here minds which.
 */
export interface ChartPlace {
  /** Top left corner of the cells. */
  readonly x: number;
  readonly y: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** Lines, from thin to bold. */
  readonly thin: number;
  readonly medium: number;
  readonly bold: number;
  /** The strokes of yarns' marks. */
  readonly mark: number;
  /** Lengths are pixels, and lines must fall on whole ones. */
  readonly isPixels: boolean;
}

/** How far a line of some width stands from the border of its cells: half a pixel where that makes it crisp. */
function nudge({ isPixels }: ChartPlace, width: number): number {
  return isPixels && width % 2 === 1 ? 0.5 : 0;
}

/** Ground as one rectangle, each other yarn as one shape. */
export function cellLayers(subject: ChartSubject, part: CellBox, place: ChartPlace): SheetItem[] {
  const { grid, ground, yarns } = subject;
  const runs = new Map<number, CellRun[]>();
  for (let line = 0; line < part.height; line++) {
    const row = part.row + part.height - 1 - line;
    let column = 0;
    while (column < part.width) {
      const yarn = cellAt(grid, part.column + column, row);
      let end = column + 1;
      while (end < part.width && cellAt(grid, part.column + end, row) === yarn) end++;
      if (yarn !== ground) {
        const found = runs.get(yarn) ?? [];
        runs.set(yarn, found);
        found.push({ column, line, length: end - column });
      }
      column = end;
    }
  }
  const { x, y, cellWidth, cellHeight } = place;
  return [
    rectangleItem(x, y, part.width * cellWidth, part.height * cellHeight, paintOf(yarns[ground]?.colour)),
    ...[...runs]
      .sort(([a], [b]) => a - b)
      .map(([yarn, found]): SheetItem => {
        return { kind: 'cells', x, y, cellWidth, cellHeight, fill: paintOf(yarns[yarn]?.colour), runs: found };
      }),
  ];
}

/** Thin lines between cells, stronger every ten from the bottom left of the whole chart, and the edge. */
export function gridLines(subject: ChartSubject, part: CellBox, place: ChartPlace): SheetItem[] {
  const { x, y, cellWidth, cellHeight } = place;
  const right = x + part.width * cellWidth;
  const bottom = y + part.height * cellHeight;
  const paint = lineToneOn(subject);
  const lines = (isStrong: boolean, width: number): SheetItem[] => {
    const found: Point[][] = [];
    const off = nudge(place, width);
    for (let i = 1; i < part.width; i++) {
      if (((part.column + i) % 10 === 0) !== isStrong) continue;
      const at = x + i * cellWidth + off;
      found.push([
        [at, y],
        [at, bottom],
      ]);
    }
    for (let i = 1; i < part.height; i++) {
      if (((part.row + i) % 10 === 0) !== isStrong) continue;
      const at = bottom - i * cellHeight + off;
      found.push([
        [x, at],
        [right, at],
      ]);
    }
    return found.length === 0 ? [] : [pathItem(found, { paint, width })];
  };
  return [...lines(false, place.thin), ...lines(true, place.medium), chartEdge(part, place)];
}

/** The edge of the cells. */
export function chartEdge(part: CellBox, place: ChartPlace): SheetItem {
  const { x, y, cellWidth, cellHeight, medium } = place;
  const off = nudge(place, medium);
  const stroke: Stroke = { paint: 'ink', width: medium };
  return rectangleItem(x + off, y + off, part.width * cellWidth, part.height * cellHeight, null, stroke);
}

/** Slanted lines over the blank columns of every repeat in the part. */
export function blankHatching(subject: ChartSubject, part: CellBox, place: ChartPlace): SheetItem[] {
  const { blankLeft, blankRight, repeat } = subject;
  const isBlank = (column: number): boolean => {
    const within = column % repeat.width;
    return within < blankLeft || within >= repeat.width - blankRight;
  };
  const lines: Point[][] = [];
  let column = 0;
  while (column < part.width) {
    let end = column;
    while (end < part.width && isBlank(part.column + end)) end++;
    if (end > column) {
      lines.push(
        ...hatch(
          place.x + column * place.cellWidth,
          place.y,
          (end - column) * place.cellWidth,
          part.height * place.cellHeight,
          Math.max(place.cellHeight / 2, place.bold * 2.5),
        ),
      );
    }
    column = end + 1;
  }
  return lines.length === 0 ? [] : [pathItem(lines, { paint: lineToneOn(subject), width: place.thin })];
}

/** Lines rising to the right at 45° within a rectangle, `step` apart up its sides. */
function hatch(x: number, y: number, width: number, height: number, step: number): Point[][] {
  const lines: Point[][] = [];
  for (let rise = step / 2; rise < width + height; rise += step) {
    // The line x + t, y + rise - t, kept inside.
    const from = Math.max(0, rise - height);
    const to = Math.min(width, rise);
    if (to > from)
      lines.push([
        [x + from, y + rise - from],
        [x + to, y + rise - to],
      ]);
  }
  return lines;
}

/** Corner brackets round the repeat; those of its corners that lie in the part. */
export function repeatBrackets(subject: ChartSubject, part: CellBox, place: ChartPlace): SheetItem[] {
  const { width, height } = subject.repeat;
  const out = place.isPixels ? place.bold + 2 : place.bold * 0.5 + place.medium;
  const off = nudge(place, place.bold);
  const armX = Math.min(place.cellWidth * 1.2, (Math.min(width, part.width) * place.cellWidth) / 3);
  const armY = Math.min(place.cellWidth * 1.2, (Math.min(height, part.height) * place.cellHeight) / 3);
  const atColumn = (column: number): number => place.x + (column - part.column) * place.cellWidth + off;
  const atRow = (row: number): number => place.y + (part.row + part.height - row) * place.cellHeight + off;
  const inColumns = (column: number, isEnd: boolean): boolean =>
    isEnd
      ? column > part.column && column <= part.column + part.width
      : column >= part.column && column < part.column + part.width;
  const inRows = (row: number, isEnd: boolean): boolean =>
    isEnd ? row > part.row && row <= part.row + part.height : row >= part.row && row < part.row + part.height;
  const lines: Point[][] = [];
  for (const isRight of [false, true]) {
    for (const isTop of [false, true]) {
      if (!inColumns(isRight ? width : 0, isRight) || !inRows(isTop ? height : 0, isTop)) continue;
      const right = isRight ? 1 : -1;
      const down = isTop ? -1 : 1;
      const x = atColumn(isRight ? width : 0) + right * out;
      const y = atRow(isTop ? height : 0) + down * out;
      lines.push([
        [x, y - down * armY],
        [x, y],
        [x - right * armX, y],
      ]);
    }
  }
  return lines.length === 0 ? [] : [pathItem(lines, { paint: 'accent', width: place.bold })];
}

/** Its mark in each cell of every yarn that has one. */
export function yarnMarks(subject: ChartSubject, part: CellBox, place: ChartPlace, marks: YarnMarks): SheetItem[] {
  const strokes = new Map<number, Point[][]>();
  const size = Math.min(place.cellWidth, place.cellHeight);
  for (let r = 0; r < part.height; r++) {
    for (let c = 0; c < part.width; c++) {
      const yarn = cellAt(subject.grid, part.column + c, part.row + r);
      const mark = marks.get(yarn);
      if (!mark) continue;
      const found = strokes.get(yarn) ?? [];
      strokes.set(yarn, found);
      const x = place.x + (c + 0.5) * place.cellWidth;
      const y = place.y + (part.height - r - 0.5) * place.cellHeight;
      found.push(...markStrokes(mark, x, y, size));
    }
  }
  return [...strokes].map(([yarn, lines]) =>
    pathItem(lines, { paint: toneOn([colourAt(subject, yarn)]), width: place.mark }),
  );
}

/** A ring in each anchor, so that it is told from the motif's own cells. */
export function anchorRings(subject: ChartSubject, part: CellBox, place: ChartPlace): SheetItem[] {
  const { grid, anchors } = subject;
  const radius = RING_OF_CELL * Math.min(place.cellWidth, place.cellHeight);
  const rings = new Map<number, Point[][]>();
  for (const cell of anchors) {
    const [column, row] = [(cell % grid.width) - part.column, Math.floor(cell / grid.width) - part.row];
    if (column < 0 || row < 0 || column >= part.width || row >= part.height) continue;
    const x = place.x + (column + 0.5) * place.cellWidth;
    const y = place.y + (part.height - row - 0.5) * place.cellHeight;
    const ring = Array.from({ length: RING_SIDES + 1 }, (_, side): Point => {
      const angle = (2 * Math.PI * side) / RING_SIDES;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
    const yarn = grid.cells[cell] as number;
    rings.set(yarn, [...(rings.get(yarn) ?? []), ring]);
  }
  return [...rings].map(([yarn, lines]) =>
    pathItem(lines, { paint: toneOn([colourAt(subject, yarn)]), width: place.mark }),
  );
}

const RING_OF_CELL = 0.3;
const RING_SIDES = 12;

/** The yarns of a chart that its lightness does not tell from the ground or from one before them in the palette. */
export function alikeYarns(subject: ChartSubject): number[] {
  const used = yarnsInUse(subject);
  return used.filter((yarn, index) =>
    used.slice(0, index).some((other) => contrastRatio(colourAt(subject, yarn), colourAt(subject, other)) < TOLD_APART),
  );
}

function lineToneOn(subject: ChartSubject): Tone {
  return toneOn(yarnsInUse(subject).map((yarn) => colourAt(subject, yarn)));
}

function colourAt({ yarns }: Pick<ChartSubject, 'yarns'>, yarn: number): string {
  return yarns[yarn]?.colour ?? '#ffffff';
}

function paintOf(colour: string | undefined): Paint {
  return yarnPaint(colour ?? '#ffffff');
}
