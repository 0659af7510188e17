/**
 * The part of a lattice that something is drawn on: where lines do not say
 * where a chart ends, because there are none, as on a punched card, or because
 * they go on over the whole sheet, as on squared paper.
 */
import type { Bounds, CellSides } from './cell-sides.ts';

/** Numbers stand beside every fifth row or column, or every tenth. */
const NUMBERED = 5;

/** Writing around a chart is at most so many cells deep … */
const MOST_WRITING = 3;

/** What is filled of a row or a column, and which share of that strokes go through as they do through writing. */
interface Line {
  readonly places: readonly number[];
  readonly written: number;
}

/** Of writing strokes go through more than this share of the cells; of numbers, which are few, through as much. */
const MOSTLY = 0.5;

/**
 * The rectangle around all filled cells of `region` that are part of the
 * chart; null if there are none. Numbers beside it are not, and end it where
 * they stand; nor is a title a row away. Cells that are filled evenly are neither.
 */
export function drawnPart(
  { columns, rows, within, filled, isEven, isSeen }: CellSides,
  table: Uint8Array,
  region: Bounds,
): Bounds | null {
  /** Cells that the sheet's edge runs through, or the photo's. */
  const isAtRim = (x: number, y: number): boolean => {
    for (let v = Math.max(0, y - 1); v <= Math.min(rows - 1, y + 1); v++) {
      for (let u = Math.max(0, x - 1); u <= Math.min(columns - 1, x + 1); u++) {
        if (table[v * columns + u] === 1 || isSeen[v * columns + u] === 0) return true;
      }
    }
    return false;
  };
  const isDrawn = (column: number, row: number): boolean => {
    const [x, y] = [column - within.left, row - within.top];
    if (x < 0 || y < 0 || x >= columns || y >= rows) return false;
    return filled[y * columns + x] === 1 && !isAtRim(x, y);
  };
  const isWritten = (column: number, row: number): boolean =>
    isEven[(row - within.top) * columns + column - within.left] === 0;
  const lineOf = (places: readonly number[], isOne: (place: number) => boolean): Line => ({
    places,
    written: places.length === 0 ? 0 : places.filter(isOne).length / places.length,
  });
  let drawn = around(isDrawn, region);
  if (drawn === null) return null;
  const ends: { left?: number; right?: number; top?: number; bottom?: number } = {};
  // One side's writing may hide another's, so all are gone round twice.
  for (let round = 0; round < 2 && drawn !== null; round++) {
    const { left, right, top, bottom }: Bounds = drawn;
    const ofColumn = (column: number): Line => {
      const places = range(top, bottom).filter((row) => isDrawn(column, row));
      return lineOf(places, (row) => isWritten(column, row));
    };
    const ofRow = (row: number): Line => {
      const places = range(left, right).filter((column) => isDrawn(column, row));
      return lineOf(places, (column) => isWritten(column, row));
    };
    const cut = {
      left: left + writingDeep((i) => ofColumn(left + i), right - left, bottom - top),
      right: right - writingDeep((i) => ofColumn(right - 1 - i), right - left, bottom - top),
      top: top + writingDeep((i) => ofRow(top + i), bottom - top, right - left),
      bottom: bottom - writingDeep((i) => ofRow(bottom - 1 - i), bottom - top, right - left),
    };
    if (cut.left > left) ends.left = cut.left;
    if (cut.right < right) ends.right = cut.right;
    if (cut.top > top) ends.top = cut.top;
    if (cut.bottom < bottom) ends.bottom = cut.bottom;
    drawn = around(isDrawn, cut);
  }
  return drawn && { ...drawn, ...ends };
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, i) => from + i);
}

function around(isDrawn: (column: number, row: number) => boolean, region: Bounds): Bounds | null {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let row = region.top; row < region.bottom; row++) {
    for (let column = region.left; column < region.right; column++) {
      if (!isDrawn(column, row)) continue;
      left = Math.min(left, column);
      right = Math.max(right, column + 1);
      top = Math.min(top, row);
      bottom = Math.max(bottom, row + 1);
    }
  }
  return left < right ? { left, right, top, bottom } : null;
}

/** How many of the outermost lines of cells are writing beside the chart. */
function writingDeep(line: (i: number) => Line, lines: number, length: number): number {
  let deep = 0;
  for (let i = 0; i < Math.min(MOST_WRITING, lines - 1); i++) {
    if (areNumbers(line(i), length) || (i > 0 && deep === i && areDigitsBeside(line(i), line(i - 1)))) deep = i + 1;
  }
  if (deep > 0) return deep;
  // A title: something written, at most two lines deep, and then an empty line.
  let isTitle = line(0).written > MOSTLY;
  for (let i = 1; i < Math.min(MOST_WRITING, lines - 1); i++) {
    const { places, written } = line(i);
    if (places.length === 0) return isTitle ? i + 1 : 0;
    isTitle ||= written > MOSTLY;
  }
  return 0;
}

/** Cells that are fives apart, most of those that would be along the chart. */
function areNumbers({ places, written }: Line, length: number): boolean {
  if (written < MOSTLY) return false;
  const isApart = places.slice(1).every((place, i) => (place - (places[i] as number)) % NUMBERED === 0);
  return isApart && places.length >= Math.max(2, Math.floor(length / NUMBERED / 2) - 1);
}

/** The first digits of numbers stand where the second do, and some lie about the middle of their cells by chance. */
function areDigitsBeside({ places }: Line, numbers: Line): boolean {
  return places.length >= 2 && places.every((place) => numbers.places.includes(place));
}
