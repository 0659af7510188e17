/** What the sheet lies on. */
import type { Bounds, CellSides } from './cell-sides.ts';

/** A side that shows this share of what lines usually show has one. */
const LINE_SHARE = 0.35;

/** … but not what is darker by less than this, of three times 256. */
const LEAST_LINE = 10;

/** With lines on so many sides it is a cell of the chart, in the shade perhaps. */
const CELL_LINES = 2;

/** Cells of the table differ from those beside them by at most this much, of three times 256. */
const TABLE_CHANGES = 60;

/** Away from the sheet, what is darker than this share of its paper is the table. */
const TABLE_BELOW = 0.72;

/** Which cells are of what the sheet lies on: filled, and alike from the rim of all that is looked at, or of the photo, inwards, without a line between. */
export function tableOf(
  { columns, rows, within, filled, middles, isSeen, upright, level }: CellSides,
  core: Bounds,
  typical: number,
): Uint8Array {
  const bright = (i: number): number =>
    (middles[3 * i] as number) + (middles[3 * i + 1] as number) + (middles[3 * i + 2] as number);
  const inCore = [...filled.keys()].filter((i) => {
    const [column, row] = [(i % columns) + within.left, Math.floor(i / columns) + within.top];
    return column >= core.left && column < core.right && row >= core.top && row < core.bottom && filled[i] === 0;
  });
  const papers = inCore.map(bright).sort((a, b) => a - b);
  const paper = papers[papers.length >> 1] ?? 0;
  const isDark = (i: number): boolean => filled[i] === 1 || bright(i) < TABLE_BELOW * paper;
  const table = new Uint8Array(columns * rows);
  const rim: number[] = [];
  const least = Math.max(LEAST_LINE, LINE_SHARE * typical);
  /** A line takes a share of the light that falls on it: in the shade it is less dark. */
  const linesAround = (i: number): number => {
    const left = Math.floor(i / columns) * (columns + 1) + (i % columns);
    const light = paper === 0 ? 1 : Math.min(1, bright(i) / paper);
    const leastHere = Math.max(LEAST_LINE, LINE_SHARE * typical * light);
    return [upright[left], upright[left + 1], level[i], level[i + columns]].filter(
      (share) => (share as number) >= leastHere,
    ).length;
  };
  const take = (i: number): void => {
    if (isDark(i) && isSeen[i] === 1 && table[i] === 0 && linesAround(i) < CELL_LINES) {
      table[i] = 1;
      rim.push(i);
    }
  };
  const isIn = (column: number, row: number): boolean =>
    column >= 0 && row >= 0 && column < columns && row < rows && isSeen[row * columns + column] === 1;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      // All that is looked at ends there, or the photo does.
      const isInside = isIn(column - 1, row) && isIn(column + 1, row) && isIn(column, row - 1) && isIn(column, row + 1);
      if (!isInside) take(row * columns + column);
    }
  }
  const isAlike = (i: number, j: number): boolean => {
    let change = 0;
    for (let c = 0; c < 3; c++) change += Math.abs((middles[3 * i + c] as number) - (middles[3 * j + c] as number));
    return change <= TABLE_CHANGES;
  };
  const isOpen = (share: number | undefined): boolean => Math.abs(share as number) < least;
  for (let i = rim.pop(); i !== undefined; i = rim.pop()) {
    const column = i % columns;
    const row = Math.floor(i / columns);
    const upper = row * columns + column;
    const left = row * (columns + 1) + column;
    if (column > 0 && isOpen(upright[left]) && isAlike(i, i - 1)) take(i - 1);
    if (column < columns - 1 && isOpen(upright[left + 1]) && isAlike(i, i + 1)) take(i + 1);
    if (row > 0 && isOpen(level[upper]) && isAlike(i, i - columns)) take(i - columns);
    if (row < rows - 1 && isOpen(level[upper + columns]) && isAlike(i, i + columns)) take(i + columns);
  }
  return table;
}
