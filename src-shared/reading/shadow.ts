/**
 * The shadow of a hand that lies over part of a chart, with its edge.
 *
 * Such a shadow can be darker than pencil, and its edge sharper than any
 * smooth light. What tells it from a figure: it has one edge, which crosses
 * the chart, all along it cells are darker by one factor on one side whatever
 * is drawn in them, and light falls inside the cells there as it does from one
 * to the next, while a figure's cells are even and end at their borders.
 */
import { followed, shadeOf, type Edge, type Field, type Tried } from './shadow-edge.ts';
import { fallsInside, type Slopes } from './shadow-inside.ts';
import { searched, searchedAtRim } from './shadow-search.ts';

/** Charts of more cells across or up are first looked at in blocks of cells, and of a block at the cell that so many are darker than: paper, where there is some. */
const MOST_AT_A_LOOK = 28;
const LIGHT_SHARE = 0.8;

/** Of the best edges that were found so many are followed. */
const FOLLOWED = 4;

/**
 * Rounds of following an edge, and how far it is moved at first: by a part of
 * the chart; where it is about known in blocks by two of half their size, and by
 * part of a cell. What is moved is moved by less in each round.
 */
const ROUNDS = 7;
const ROUNDS_AGAIN = 4;
const PART_MOVED = 12;
const BLOCKS_MOVED = 2;
const CELLS_MOVED = 0.7;

/** A shadow over a corner that is no larger than so many blocks is looked for in cells, and moved by so many of them at first. */
const CORNER_BLOCKS = 2;
const CORNER_MOVED = 1.5;

/** How often an edge is followed again, beside a surface that knows of it. */
const AGAIN = 2;

/** A straight edge must explain so many more pairs than none to be followed: bent as it is it will explain many more. */
const LEAST_AT_FIRST = 1;

/** So many pairs at least must be explained by an edge that were not without. */
const LEAST_GAIN = 10;

/**
 * The logarithm of a shadow on each cell, 0 or less; null where there is none.
 * `heights` are logarithms of light, `counts` how much each cell says, 0 … 1;
 * `smooth` lays a surface through heights that is too stiff to follow a shadow.
 */
export function shadowOn(
  heights: Float64Array,
  counts: Float64Array,
  slopes: Slopes,
  columns: number,
  smooth: (heights: Float64Array) => Float64Array,
): Float64Array | null {
  const under = (shade: Float64Array | null): Field => {
    const even = smooth(shade ? heights.map((height, cell) => height - (shade[cell] as number)) : heights);
    const left = heights.map((height, cell) => height - (even[cell] as number));
    return { heights: left, counts, columns, rows: heights.length / columns };
  };
  const field = under(null);
  const side = Math.ceil(Math.max(field.columns, field.rows) / MOST_AT_A_LOOK);
  let best = wholeIn(field, side, slopes) ?? (side === 1 ? null : cornerIn(field, side, slopes));
  if (best === null) return null;
  // Even a stiff surface has followed it a little; beside what is known of it, it does not.
  for (let again = 0; again < AGAIN; again++) {
    best = followed(best.edge, under(shadeOf(best.edge, field)), CELLS_MOVED, ROUNDS_AGAIN);
  }
  return shadeOf(best.edge, field);
}

/** The edge that is seen in blocks of so many cells a side, and then in ever smaller ones; null where it is none. */
function wholeIn(field: Field, side: number, slopes: Slopes): Tried | null {
  const blocksOf = (many: number): Field => (many === 1 ? field : inBlocks(field, many));
  let best = bestIn(blocksOf(side));
  for (let [from, to] = [side, side >> 1]; best && to >= 1; [from, to] = [to, to >> 1]) {
    const larger = magnified(best.edge, from / to);
    best =
      to === 1
        ? followed(larger, field, CELLS_MOVED, ROUNDS_AGAIN)
        : followed(larger, blocksOf(to), BLOCKS_MOVED, ROUNDS);
  }
  return best && isShadow(best, slopes, field) ? best : null;
}

/** The edge of a shadow over one corner, which is too small to be seen in blocks of so many cells a side. */
function cornerIn(field: Field, side: number, slopes: Slopes): Tried | null {
  const best = mostOf(
    searchedAtRim(field, CORNER_BLOCKS * side)
      .slice(0, FOLLOWED)
      .filter(({ gain }) => gain >= LEAST_GAIN)
      .map(({ edge }) => followed(edge, field, CORNER_MOVED, ROUNDS)),
  );
  return best && isShadow(best, slopes, field) ? best : null;
}

function isShadow({ edge, gain }: Tried, slopes: Slopes, field: Field): boolean {
  return gain >= LEAST_GAIN && fallsInside(edge, slopes, field);
}

function mostOf(tried: readonly Tried[]): Tried | null {
  return tried.reduce<Tried | null>((most, one) => (most && most.gain >= one.gain ? most : one), null);
}

function bestIn(field: Field): Tried | null {
  return mostOf(
    searched(field)
      .slice(0, FOLLOWED)
      .filter(({ gain }) => gain >= LEAST_AT_FIRST)
      .map(({ edge }) => followed(edge, field, Math.max(field.columns, field.rows) / PART_MOVED, ROUNDS)),
  );
}

/** `side` × `side` cells as one; what is left over at the right and at the top goes. */
function inBlocks({ heights, counts, columns, rows }: Field, side: number): Field {
  const [across, up] = [Math.floor(columns / side), Math.floor(rows / side)];
  const chosen = Array.from({ length: across * up }, (_, block) => {
    const first = Math.floor(block / across) * side * columns + (block % across) * side;
    const cells = Array.from({ length: side * side }, (_, i) => first + Math.floor(i / side) * columns + (i % side));
    cells.sort((a, b) => (heights[a] as number) - (heights[b] as number));
    return cells[Math.floor(cells.length * LIGHT_SHARE)] as number;
  });
  return {
    heights: Float64Array.from(chosen, (cell) => heights[cell] as number),
    counts: Float64Array.from(chosen, (cell) => counts[cell] as number),
    columns: across,
    rows: up,
  };
}

function magnified(edge: Edge, side: number): Edge {
  return { ...edge, width: edge.width * side, knots: edge.knots.map((knot) => knot * side) };
}
