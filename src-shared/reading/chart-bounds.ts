/**
 * Where on a lattice the chart begins and ends.
 *
 * A lattice is seen a few cells beyond the chart, and over writing that
 * happens to be as far apart as its lines. So each side of each cell is looked
 * at by itself: is it darker there than to both sides? The chart is the
 * rectangle whose sides show most of that; sides without a line, as there are
 * around it, count against it. Between two cells that are both filled a line
 * is often not seen, and nothing is said.
 */
import type { Bounds, CellSides } from './cell-sides.ts';
import { strengths } from './line-strengths.ts';

export interface ChartBounds extends Bounds {
  /** Whether each of its outermost lines is clearly one, and what lies beyond is none. */
  readonly isClear: boolean;
  /** Whether an empty strip goes across it, as between two charts. */
  readonly hasStrip: boolean;
  /** How many sides of cells show a line in it, less those that should and do not. */
  readonly worth: number;
}

/** A side counts for the chart from so many times what chance makes … */
const ABOVE_CHANCE = 3;

/** … but not below and not above these shares of what sides in the chart usually show. */
const LEAST_SHARE = 0.2;
const MOST_SHARE = 0.35;

/** Brighter than its sides by more than this share of what a line is darker, a line is hidden. */
const HIDDEN = 0.6;

/** Beside the table what is darker than both its sides by this share of what lines usually are is a line. */
const RIDGE_SHARE = 0.5;

/** The rectangle whose cells' sides show most, where they usually show `typical`. */
export function boundsOf(sides: CellSides, core: Bounds, typical: number, table: Uint8Array): ChartBounds {
  const { columns, rows, upright, level, uprightRidge, levelRidge, within, isSeen, filled } = sides;
  const isFilled = (column: number, row: number): boolean =>
    column >= 0 && row >= 0 && column < columns && row < rows && filled[row * columns + column] === 1;
  const isTable = (column: number, row: number): boolean =>
    column >= 0 && row >= 0 && column < columns && row < rows && table[row * columns + column] === 1;
  const seen = (column: number, row: number): boolean =>
    column >= 0 && row >= 0 && column < columns && row < rows && isSeen[row * columns + column] === 1;
  const least = Math.max(LEAST_SHARE, Math.min(MOST_SHARE, (ABOVE_CHANCE * sides.chance) / typical));
  const strengthOf = strengths(sides, core, typical);
  const worth = (share: number, usual: number, oneFilled: boolean, otherFilled: boolean): number => {
    // Much brighter than what is beside it: a sign reaches to both sides of the line, and hides it.
    const value = (share < -HIDDEN * usual ? 0 : Math.min(1, share / usual)) - least;
    // Between two filled cells a line is often not seen, and that it is not says nothing.
    return oneFilled && otherFilled ? Math.max(0, value) : value;
  };
  const V = new Float32Array((columns + 1) * rows);
  const H = new Float32Array(columns * (rows + 1));
  const isShaded = (column: number, row: number, otherColumn: number, otherRow: number): boolean =>
    isFilled(column, row) && isFilled(otherColumn, otherRow);
  /** Beside the table, or what is as dark as it in the shade, only a line counts; a rim of the sheet is none. */
  const valueAt = (
    [column, row]: readonly [number, number],
    [otherColumn, otherRow]: readonly [number, number],
    share: number,
    ridge: number,
    usual: number,
  ): number => {
    const [one, other] = [isTable(column, row), isTable(otherColumn, otherRow)];
    if (one && other) return -1;
    if (one || other) {
      if (isShaded(column, row, otherColumn, otherRow)) return worth(share, usual, true, true);
      return ridge < RIDGE_SHARE * usual ? -1 : worth(ridge, usual, false, false);
    }
    if (!seen(column, row) && !seen(otherColumn, otherRow)) return -1;
    return worth(share, usual, isFilled(column, row), isFilled(otherColumn, otherRow));
  };
  for (let row = 0; row < rows; row++) {
    for (let line = 0; line <= columns; line++) {
      const side = row * (columns + 1) + line;
      const [share, ridge] = [upright[side] as number, uprightRidge[side] as number];
      V[side] = valueAt([line - 1, row], [line, row], share, ridge, strengthOf(line, row));
    }
  }
  for (let line = 0; line <= rows; line++) {
    for (let column = 0; column < columns; column++) {
      const side = line * columns + column;
      const [share, ridge] = [level[side] as number, levelRidge[side] as number];
      H[side] = valueAt([column, line - 1], [column, line], share, ridge, strengthOf(column, line));
    }
  }
  // The best run of columns for every pair of rows (Kadane), lines and cells by turns.
  let best = { worth: -Infinity, left: 0, top: 0, right: 0, bottom: 0 };
  const uprights = new Float32Array(columns + 1);
  const levels = new Float32Array(columns);
  for (let top = 0; top < rows; top++) {
    uprights.fill(0);
    for (let i = 0; i < columns; i++) levels[i] = H[top * columns + i] as number;
    for (let bottom = top + 1; bottom <= rows; bottom++) {
      for (let i = 0; i <= columns; i++)
        uprights[i] = (uprights[i] as number) + (V[(bottom - 1) * (columns + 1) + i] as number);
      for (let i = 0; i < columns; i++) levels[i] = (levels[i] as number) + (H[bottom * columns + i] as number);
      let sum = -Infinity;
      let from = 0;
      for (let line = 0; line <= columns; line++) {
        if (line > 0) {
          const on = sum + (levels[line - 1] as number) + (uprights[line] as number);
          if (on > best.worth) best = { worth: on, left: from, top, right: line, bottom };
          sum = on;
        }
        if ((uprights[line] as number) >= sum) {
          sum = uprights[line] as number;
          from = line;
        }
      }
    }
  }
  const {
    left,
    right,
    top,
    bottom,
    isClear,
    hasStrip: isCut,
  } = settled(best, least, { columns, rows, upright: V, level: H });
  return {
    left: within.left + left,
    right: within.left + right,
    top: within.top + top,
    bottom: within.top + bottom,
    isClear,
    hasStrip: isCut,
    worth: best.worth,
  };
}

/** What each side counts for the chart; 0 where it is hidden. */
interface Worths {
  readonly columns: number;
  readonly rows: number;
  readonly upright: Float32Array;
  readonly level: Float32Array;
}

/** An outer row belongs to the chart if its lines show this share of what those next to it show. */
const OUTER_SHARE = 0.35;

/** A row so far from both ends that shows at most this share of what rows usually show parts two charts. */
const STRIP_WITHIN = 4;
const STRIP_SHARE = 0.15;

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, i) => from + i);
}

/** Outer rows that may be writing. */
const OUTER_ROWS = 3;

/** Of the sides along a row so many are seen, not hidden by what is filled, for it to be judged. */
const LEAST_KNOWN = 0.15;

/** Rows next to it that an outer one is held against. */
const HELD_AGAINST = 5;

/** A title above the chart has some strokes where lines would be; not as many as the rows of the chart. */
function settled(best: Bounds, least: number, { columns, rows, upright, level }: Worths): Omit<ChartBounds, 'worth'> {
  let { left, right, top, bottom } = best;
  /** The mean of what is known; what is not is nothing. */
  const mean = (from: number, to: number, at: (i: number) => number): number => {
    let [sum, known] = [0, 0];
    for (let i = from; i < to; i++) {
      const worth = at(i);
      sum += worth;
      if (worth !== 0) known++;
    }
    return known > LEAST_KNOWN * (to - from) ? sum / known : Infinity;
  };
  const ofRow = (row: number): number => mean(left, right + 1, (line) => upright[row * (columns + 1) + line] as number);
  const ofColumn = (column: number): number =>
    mean(top, bottom + 1, (line) => level[line * columns + column] as number);
  const ofLevel = (line: number): number => mean(left, right, (column) => level[line * columns + column] as number);
  const ofUpright = (line: number): number => mean(top, bottom, (row) => upright[row * (columns + 1) + line] as number);
  /** What a line shows as a share of what those inwards of it show. */
  const shareOf = (of: (i: number) => number, i: number, from: number, inwards: number): number => {
    const others = Array.from({ length: HELD_AGAINST }, (_, k) => of(from + k * inwards)).sort((a, b) => a - b);
    const usual = others[HELD_AGAINST >> 1] as number;
    return usual === Infinity ? 1 : (of(i) + least) / Math.max(1e-3, usual + least);
  };
  const sidesNow = () => [
    { cells: ofRow, lines: ofLevel, cell: top, line: top, inwards: 1, last: rows },
    { cells: ofRow, lines: ofLevel, cell: bottom - 1, line: bottom, inwards: -1, last: rows },
    { cells: ofColumn, lines: ofUpright, cell: left, line: left, inwards: 1, last: columns },
    { cells: ofColumn, lines: ofUpright, cell: right - 1, line: right, inwards: -1, last: columns },
  ];
  for (let changed = true; changed;) {
    changed = false;
    sidesNow().forEach(({ cells, lines, cell, line, inwards }, side) => {
      // Beyond a row that is none, as between a title and the chart, nothing is.
      for (let k = OUTER_ROWS - 1; k >= 0 && !changed; k--) {
        if ((side < 2 ? bottom - top : right - left) <= HELD_AGAINST + k + 1) continue;
        const [c, l] = [cell + k * inwards, line + k * inwards];
        const isCell = shareOf(cells, c, c + inwards, inwards) >= OUTER_SHARE;
        const isLine = shareOf(lines, l, l + inwards, inwards) >= OUTER_SHARE;
        // A line within may be hidden; the outermost one ends the chart.
        if (k === 0 ? isCell && isLine : isCell || isLine) continue;
        changed = true;
        if (side === 0) top += k + 1;
        else if (side === 1) bottom -= k + 1;
        else if (side === 2) left += k + 1;
        else right -= k + 1;
      }
    });
  }
  /** Whether a row within shows next to nothing of what rows usually show. */
  const hasStrip = (of: (i: number) => number, from: number, to: number): boolean => {
    const shown = range(from, to).map((i) => of(i) + least);
    const usual = [...shown].sort((a, b) => a - b)[shown.length >> 1] as number;
    return usual !== Infinity && shown.slice(STRIP_WITHIN, -STRIP_WITHIN).some((share) => share <= STRIP_SHARE * usual);
  };
  const isClear = sidesNow().every(({ cells, lines, cell, line, inwards, last }, side) => {
    if ((side < 2 ? bottom - top : right - left) <= HELD_AGAINST + 1) return false;
    const isIn =
      shareOf(cells, cell, cell + inwards, inwards) >= CLEARLY_IN &&
      shareOf(lines, line, line + inwards, inwards) >= CLEARLY_IN;
    const [nextCell, nextLine] = [cell - inwards, line - inwards];
    if (nextCell < 0 || nextCell >= last) return isIn;
    const beyond = [shareOf(cells, nextCell, cell, inwards), shareOf(lines, nextLine, line, inwards)];
    const isOut = Math.min(...beyond) <= CLEARLY_OUT && Math.max(...beyond) <= HARDLY_IN;
    return isIn && isOut;
  });
  return {
    left,
    right,
    top,
    bottom,
    isClear,
    hasStrip: hasStrip(ofColumn, left, right) || hasStrip(ofRow, top, bottom),
  };
}

/** To be sure of the outermost row its lines show at least this share … */
const CLEARLY_IN = 0.55;

/** … and of the next one beyond, where numbers may stand, the lines of one kind at most this, and of the other this. */
const CLEARLY_OUT = 0.3;
const HARDLY_IN = 0.6;
