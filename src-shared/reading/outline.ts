/**
 * An outline drawn around a chart on squared paper, whose lines go on over the
 * whole sheet: lines of the paper, thick ones too, are as dark beyond its
 * corners as between them; those of an outline are not.
 */
import type { Bounds, CellSides } from './cell-sides.ts';

/** Cells along a line beyond a corner that tell how dark the paper's own line is. */
const BEYOND = 3;

/** An outline is darker than the paper's own line by this share of what lines usually show, and in this share of its length. */
const DARKER = 0.45;
const MOSTLY = 0.7;

/**
 * Beside what is filled a side tells nothing, but where it is so many times as
 * dark as usual, which no thick line of paper is: where both cells are alike in
 * being filled, as in the shadow of a hand; and where it is darker than either,
 * as beside a sign, which leaves paper around it. So dark an outline must be,
 * too, where nothing beyond its corners tells how dark the paper's own line is.
 */
const SURELY_DARK = 2.2;

/** Sides of cells that must tell, as a share of its length: beside what is filled they do not. */
const LEAST_KNOWN = 0.3;

/** Shorter ones are underlined words, or boxes of a legend. */
const LEAST_LENGTH = 5;

/** Of each direction so many lines are tried against each other. */
const MOST_LINES = 24;

/** Along a line, side by side of a cell, how dark it is as a share of what is usual; NaN where that is not told. */
type Line = Float32Array;

/** The outline within `region`; null if none is drawn. Lines usually show `typical`. */
export function outlineOn(sides: CellSides, table: Uint8Array, region: Bounds, typical: number): Bounds | null {
  const { within } = sides;
  const { uprights, levels } = linesOf(sides, table, typical);
  const left = region.left - within.left;
  const top = region.top - within.top;
  const columns = likeliest(uprights, top, region.bottom - within.top);
  const rows = likeliest(levels, left, region.right - within.left);
  let best: Bounds | null = null;
  let most = 0;
  for (const [from, to] of pairs(rows)) {
    for (const [one, other] of pairs(columns)) {
      let worth = 0;
      for (const [line, start, end] of [
        [uprights[one], from, to],
        [uprights[other], from, to],
        [levels[from], one, other],
        [levels[to], one, other],
      ] as const) {
        const side = worthOf(line as Line, start, end);
        worth = side > 0 ? worth + side : -Infinity;
        if (worth < 0) break;
      }
      if (worth <= most) continue;
      most = worth;
      best = { left: within.left + one, right: within.left + other, top: within.top + from, bottom: within.top + to };
    }
  }
  return best;
}

/** By their number: one more than columns, or than rows. */
function linesOf(
  { columns, rows, upright, level, uprightRidge, levelRidge, filled, isSeen }: CellSides,
  table: Uint8Array,
  typical: number,
): { readonly uprights: readonly Line[]; readonly levels: readonly Line[] } {
  /** Nothing is drawn in the cell, and it lies on the sheet. */
  const isPaper = (cell: number): boolean => filled[cell] === 0 && isSeen[cell] === 1 && table[cell] === 0;
  const isShade = (cell: number): boolean => filled[cell] === 1 && isSeen[cell] === 1;
  const isTold = (isIn: boolean, one: number, other: number, share: number, ridge: number): boolean =>
    isIn &&
    ((isPaper(one) && isPaper(other)) ||
      (share >= SURELY_DARK && isShade(one) && isShade(other)) ||
      (ridge >= SURELY_DARK && ((isShade(one) && isPaper(other)) || (isPaper(one) && isShade(other)))));
  const uprights = Array.from({ length: columns + 1 }, (_, column) =>
    Float32Array.from({ length: rows }, (_, row) => {
      const cell = row * columns + column;
      const side = row * (columns + 1) + column;
      const share = (upright[side] as number) / typical;
      const ridge = (uprightRidge[side] as number) / typical;
      return isTold(column > 0 && column < columns, cell - 1, cell, share, ridge) ? share : NaN;
    }),
  );
  const levels = Array.from({ length: rows + 1 }, (_, row) =>
    Float32Array.from({ length: columns }, (_, column) => {
      const cell = row * columns + column;
      const share = (level[cell] as number) / typical;
      const ridge = (levelRidge[cell] as number) / typical;
      return isTold(row > 0 && row < rows, cell - columns, cell, share, ridge) ? share : NaN;
    }),
  );
  return { uprights, levels };
}

/** Lines of which some stretch between two places is darkest against what it goes on with. */
function likeliest(lines: readonly Line[], least: number, most: number): number[] {
  const worths = lines.map((line) => {
    let best = 0;
    for (let from = least; from + LEAST_LENGTH <= most; from++) {
      for (let to = from + LEAST_LENGTH; to <= most; to++) best = Math.max(best, worthOf(line, from, to));
    }
    return best;
  });
  return [...lines.keys()]
    .filter((line) => (worths[line] as number) > 0)
    .sort((one, other) => (worths[other] as number) - (worths[one] as number))
    .slice(0, MOST_LINES)
    .sort((one, other) => one - other);
}

function pairs(of: readonly number[]): (readonly [number, number])[] {
  return of.flatMap((one, i) =>
    of.slice(i + 1).flatMap((other) => (other - one >= LEAST_LENGTH ? [[one, other] as const] : [])),
  );
}

/** How many sides more are darker than not, where most are; 0 if it is no side of an outline. */
function worthOf(line: Line, from: number, to: number): number {
  const before = middleOf(line.subarray(Math.max(0, from - BEYOND), from));
  const after = middleOf(line.subarray(to, to + BEYOND));
  const own = before === null && after === null ? SURELY_DARK : DARKER + Math.max(before ?? 0, after ?? 0);
  let [known, dark] = [0, 0];
  for (let i = from; i < to; i++) {
    const share = line[i] as number;
    if (Number.isNaN(share)) continue;
    known++;
    if (share >= own) dark++;
  }
  return known < LEAST_KNOWN * (to - from) || dark < MOSTLY * known ? 0 : 2 * dark - known;
}

function middleOf(shares: Line): number | null {
  const known = shares.filter((share) => !Number.isNaN(share)).sort();
  return known[known.length >> 1] ?? null;
}
