/**
 * The shadow of a hand that lies over part of a chart, with its edge.
 *
 * Such a shadow can be darker than pencil, and its edge sharper than any
 * smooth light. What tells it from a figure: it has one edge, which crosses
 * the chart, all along it cells are darker by one factor on one side whatever
 * is drawn in them, and light falls inside the cells there as it does from one
 * to the next, while a figure's cells are even and end at their borders.
 */
import { pairsOf, type Pair } from './surface.ts';

/** By how much the logarithm of light rises inside each cell, to the right and upwards: two numbers a cell, for a cell's width. */
export type Slopes = Float64Array;

/** Edges looked for: their directions, how many widths from the least one on, how deep (as logarithms), and the most places along a direction. */
const DIRECTIONS = 36;
const WIDTHS = 3;
const LEAST_WIDTH = 0.2;
const DEPTHS = [0.14, 0.28, 0.45, 0.65] as const;
const MOST_PLACES = 48;
const LEAST_STEP = 0.6;

/** A pair that an edge changes by less than this share of its depth is left out. */
const LEAST_CHANGE = 0.04;

/** Charts of more cells across or up are first looked at in blocks of cells, and of a block at the cell that so many are darker than: paper, where there is some. */
const MOST_AT_A_LOOK = 28;
const LIGHT_SHARE = 0.8;

/** Pairs asked while looking, and while following the best that were found, of which there are so many. */
const PAIRS_SEARCHED = 1_600;
const PAIRS_FOLLOWED = 6_000;
const FOLLOWED = 4;

/** Places at which an edge may bend, ends included. */
const KNOTS = 6;

/** Rounds of following an edge, and how far it is moved at first: by a part of the chart, and where it is about known by part of a cell. What is moved is moved by less in each. */
const ROUNDS = 7;
const ROUNDS_AGAIN = 4;
const PART_MOVED = 12;
const CELLS_MOVED = 0.7;

/** How often an edge is followed again, beside a surface that knows of it. */
const AGAIN = 2;

/** A straight edge must explain so many more pairs than none to be followed: bent as it is it will explain many more. */
const LEAST_AT_FIRST = 1;

/** Pairs are fitted to about so much (a logarithm), less exactly while looking, and slopes inside cells. */
const SEARCH_SCALE = 0.15;
const PAIR_SCALE = 0.05;
const SLOPE_SCALE = 0.08;

/** So many pairs at least must be explained by an edge that were not without. */
const LEAST_GAIN = 10;

/** Slopes are those between places so far to either side of a cell's middle, in cells. */
const SLOPE_REACH = 0.14;

/** Cells on the edge are those in which light falls by this much; in them it must fall by such a share of what the edge says, and so clearly. */
const ON_EDGE = 0.02;
const LEAST_SHARE = 0.4;
const LEAST_CLARITY = 0.02;

/** So many slopes at least must be explained by it in all: a few ragged cells along a figure's border fall in its way by chance. */
const LEAST_EXPLAINED = 2.5;

interface Edge {
  /** Direction out of the shadow, in radians from the right upwards. */
  readonly angle: number;
  /** How far out the edge lies, in cells from the chart's middle, at places evenly across. */
  readonly knots: readonly number[];
  /** Of its fall, in cells: nine tenths of it lie within six of these. */
  readonly width: number;
  /** By how much the logarithm of light falls. */
  readonly depth: number;
}

interface Tried {
  readonly edge: Edge;
  /** How many pairs it explains, more than without it. */
  readonly gain: number;
}

/** Logarithms of the light of cells with smooth light taken off, what each cell counts, and how they stand. */
interface Field {
  readonly heights: Float64Array;
  readonly counts: Float64Array;
  readonly columns: number;
  readonly rows: number;
}

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
  let best = bestIn(side === 1 ? field : inBlocks(field, side));
  if (best && side > 1) best = followed(magnified(best.edge, side), field, CELLS_MOVED, ROUNDS_AGAIN);
  if (!best || best.gain < LEAST_GAIN || !fallsInside(best.edge, slopes, field)) return null;
  // Even a stiff surface has followed it a little; beside what is known of it, it does not.
  for (let again = 0; again < AGAIN; again++) {
    best = followed(best.edge, under(shadeOf(best.edge, field)), CELLS_MOVED, ROUNDS_AGAIN);
  }
  return shadeOf(best.edge, field);
}

function bestIn(field: Field): Tried | null {
  return searched(field)
    .slice(0, FOLLOWED)
    .filter(({ gain }) => gain >= LEAST_AT_FIRST)
    .map(({ edge }) => followed(edge, field, Math.max(field.columns, field.rows) / PART_MOVED, ROUNDS))
    .reduce<Tried | null>((most, tried) => (most && most.gain >= tried.gain ? most : tried), null);
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

/** What a pair costs that is off by so much: at most one, however badly it fits (Geman and McClure). */
function cost(off: number, scale: number): number {
  return off ** 2 / (off ** 2 + scale ** 2);
}

/** The best straight edge of each direction, the best first. */
function searched(field: Field): Tried[] {
  const pairs = pairsOf(field.heights, field.counts, field.columns, PAIRS_SEARCHED);
  const directions = Array.from({ length: DIRECTIONS }, (_, i) => (2 * Math.PI * i) / DIRECTIONS);
  return directions.flatMap((angle) => bestOf(angle, pairs, field) ?? []).sort((one, other) => other.gain - one.gain);
}

function bestOf(angle: number, pairs: readonly Pair[], { columns, rows }: Field): Tried | null {
  const [right, up] = [Math.cos(angle), Math.sin(angle)];
  const outOf = (cell: number): number => {
    const column = cell % columns;
    return (column + 0.5 - columns / 2) * right + ((cell - column) / columns + 0.5 - rows / 2) * up;
  };
  const placed = pairs
    .map(({ one, other, difference, weight }) => ({ one: outOf(one), other: outOf(other), difference, weight }))
    .sort((a, b) => a.one - b.one);
  const far = (Math.abs(right) * columns + Math.abs(up) * rows) / 2;
  const widest = Math.max(1, Math.max(columns, rows) / 40);
  let best: Tried | null = null;
  for (let w = 0; w < WIDTHS; w++) {
    const width = LEAST_WIDTH * (widest / LEAST_WIDTH) ** (w / (WIDTHS - 1));
    const step = Math.max(LEAST_STEP, width, (2 * far) / MOST_PLACES);
    let first = 0;
    for (let place = step - far; place < far; place += step) {
      // Pairs further off than this lie wholly in the shadow or out of it.
      const near = 4 * width + 2;
      while (first < placed.length && (placed[first] as Placed).one < place - near) first++;
      const gains = new Float64Array(DEPTHS.length);
      for (let i = first; i < placed.length; i++) {
        const { one, other, difference, weight } = placed[i] as Placed;
        if (one > place + near) break;
        const change = shadeAt(other - place, width) - shadeAt(one - place, width);
        if (Math.abs(change) < LEAST_CHANGE) continue;
        const before = cost(difference, SEARCH_SCALE);
        for (let k = 0; k < DEPTHS.length; k++) {
          const after = cost(difference + (DEPTHS[k] as number) * change, SEARCH_SCALE);
          gains[k] = (gains[k] as number) + weight * (before - after);
        }
      }
      DEPTHS.forEach((depth, k) => {
        const gain = gains[k] as number;
        if (best && best.gain >= gain) return;
        best = { edge: { angle, width, depth, knots: Array<number>(KNOTS).fill(place) }, gain };
      });
    }
  }
  return best;
}

/** A pair by how far out its cells lie. */
interface Placed {
  readonly one: number;
  readonly other: number;
  readonly difference: number;
  readonly weight: number;
}

/** How much of a shadow there is so far out of its edge, 0 … 1. */
function shadeAt(out: number, width: number): number {
  return 1 / (1 + Math.exp(out / width));
}

/** The logarithm of the shadow at each cell, or so far to the right of and above its middle. */
function shadeOf({ angle, knots, width, depth }: Edge, { columns, rows }: Field, dx = 0, dy = 0): Float64Array {
  const [right, up] = [Math.cos(angle), Math.sin(angle)];
  const across = (Math.abs(up) * columns + Math.abs(right) * rows) / 2;
  return Float64Array.from({ length: columns * rows }, (_, cell) => {
    const column = cell % columns;
    const x = column + 0.5 + dx - columns / 2;
    const y = (cell - column) / columns + 0.5 + dy - rows / 2;
    const at = Math.max(0, Math.min(KNOTS - 1, (((y * right - x * up) / across + 1) / 2) * (KNOTS - 1)));
    const knot = Math.min(KNOTS - 2, Math.floor(at));
    const part = at - knot;
    const edge = (knots[knot] as number) * (1 - part) + (knots[knot + 1] as number) * part;
    return -depth * shadeAt(x * right + y * up - edge, width);
  });
}

/** The edge moved, turned, bent, softened and deepened as long as it explains more; moved by so many cells at first. */
function followed(start: Edge, field: Field, moved: number, rounds: number): Tried {
  const pairs = pairsOf(field.heights, field.counts, field.columns, PAIRS_FOLLOWED);
  const gainOf = (edge: Edge): number => {
    const shade = shadeOf(edge, field);
    let gain = 0;
    for (const { one, other, difference, weight } of pairs) {
      const change = (shade[other] as number) - (shade[one] as number);
      if (change !== 0) gain += weight * (cost(difference, PAIR_SCALE) - cost(difference - change, PAIR_SCALE));
    }
    return gain;
  };
  let best: Tried = { edge: start, gain: gainOf(start) };
  const attempt = (change: (edge: Edge) => Partial<Edge>): void => {
    const edge = { ...best.edge, ...change(best.edge) };
    const gain = gainOf(edge);
    if (gain > best.gain) best = { edge, gain };
  };
  const moveKnots = (by: (knot: number) => number): void =>
    attempt(({ knots }) => ({ knots: knots.map((place, knot) => place + by(knot)) }));
  // A turn moves the edge's ends about as far.
  let turn = Math.min(Math.PI / DIRECTIONS, (2 * moved) / Math.max(field.columns, field.rows));
  let [shift, factor] = [moved, 1.5];
  for (let round = 0; round < rounds; round++) {
    for (const way of [1, -1]) {
      attempt(({ angle }) => ({ angle: angle + way * turn }));
      attempt(({ width }) => ({ width: Math.max(LEAST_WIDTH / 2, width * factor ** way) }));
      attempt(({ depth }) => ({ depth: depth * factor ** (way / 2) }));
      moveKnots(() => way * shift);
      moveKnots((knot) => way * shift * (knot / (KNOTS - 1) - 0.5));
      for (let bend = 0; bend < KNOTS; bend++) {
        moveKnots((knot) => (knot >= bend ? way * shift : 0));
        moveKnots((knot) => (knot === bend ? way * shift : 0));
      }
    }
    turn /= 2;
    shift /= 1.7;
    factor = Math.sqrt(factor);
  }
  return best;
}

/** Whether light falls inside the cells on the edge about as it says: in those along a figure's border it does not. */
function fallsInside(edge: Edge, slopes: Slopes, field: Field): boolean {
  const [left, right] = [shadeOf(edge, field, -SLOPE_REACH), shadeOf(edge, field, SLOPE_REACH)];
  const [below, above] = [shadeOf(edge, field, 0, -SLOPE_REACH), shadeOf(edge, field, 0, SLOPE_REACH)];
  const pairs: { readonly said: number; readonly seen: number }[] = [];
  left.forEach((_, cell) => {
    const along = ((right[cell] as number) - (left[cell] as number)) / (2 * SLOPE_REACH);
    const up = ((above[cell] as number) - (below[cell] as number)) / (2 * SLOPE_REACH);
    if (Math.hypot(along, up) < ON_EDGE) return;
    pairs.push({ said: along, seen: slopes[cell * 2] as number });
    pairs.push({ said: up, seen: slopes[cell * 2 + 1] as number });
  });
  let [best, gainThere] = [0, 0];
  for (let share = 0; share <= 2; share += 0.1) {
    const gain = pairs.reduce(
      (sum, { said, seen }) => sum + cost(seen, SLOPE_SCALE) - cost(seen - share * said, SLOPE_SCALE),
      0,
    );
    if (gain > gainThere) [best, gainThere] = [share, gain];
  }
  return best >= LEAST_SHARE && gainThere >= Math.max(LEAST_EXPLAINED, LEAST_CLARITY * pairs.length);
}
