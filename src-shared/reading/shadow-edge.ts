/** The edge of a shadow that crosses a chart, and how far it explains by how much cells differ. */
import { pairsOf, type Pair } from './surface.ts';

/** Places at which an edge may bend, ends included. */
const KNOTS = 6;

/** A search finds edges no narrower than this, in cells; one that is followed may come to half of it. */
export const LEAST_WIDTH = 0.2;

/** An edge that is followed is turned by no more than the search's directions lie apart, in radians. */
export const MOST_TURNED = Math.PI / 36;

/** Pairs asked while an edge is followed: those that lie within so many of its widths, beyond which shadow and light are even. */
const PAIRS_FOLLOWED = 6_000;
const NEAR_WIDTHS = 5;

/** Pairs are fitted to about so much (a logarithm). */
const PAIR_SCALE = 0.05;

export interface Edge {
  /** Direction out of the shadow, in radians from the right upwards. */
  readonly angle: number;
  /** How far out the edge lies, in cells from the chart's middle, at places evenly across. */
  readonly knots: readonly number[];
  /** Of its fall, in cells: nine tenths of it lie within six of these. */
  readonly width: number;
  /** By how much the logarithm of light falls. */
  readonly depth: number;
}

export interface Tried {
  readonly edge: Edge;
  /** How many pairs it explains, more than without it. */
  readonly gain: number;
}

/** Logarithms of the light of cells with smooth light taken off, what each cell counts, and how they stand. */
export interface Field {
  readonly heights: Float64Array;
  readonly counts: Float64Array;
  readonly columns: number;
  readonly rows: number;
}

/** What a pair costs that is off by so much: at most one, however badly it fits (Geman and McClure). */
export function cost(off: number, scale: number): number {
  return off ** 2 / (off ** 2 + scale ** 2);
}

/** How much of a shadow there is so far out of its edge, 0 … 1. */
export function shadeAt(out: number, width: number): number {
  return 1 / (1 + Math.exp(out / width));
}

/** The logarithm of the shadow at each cell, or so far to the right of and above its middle. */
export function shadeOf(edge: Edge, field: Field, dx = 0, dy = 0): Float64Array {
  const shade = shadeBy(edge, field, dx, dy);
  return Float64Array.from({ length: field.columns * field.rows }, (_, cell) => shade(cell));
}

/** {@link shadeOf} of one cell. */
function shadeBy(edge: Edge, field: Field, dx = 0, dy = 0): (cell: number) => number {
  const out = outOfEdge(edge, field, dx, dy);
  return (cell) => -edge.depth * shadeAt(out(cell), edge.width);
}

/** How far each cell lies out of an edge, in cells; below 0 it lies in its shadow. */
function outOfEdge({ angle, knots }: Edge, { columns, rows }: Field, dx = 0, dy = 0): (cell: number) => number {
  const [right, up] = [Math.cos(angle), Math.sin(angle)];
  const across = (Math.abs(up) * columns + Math.abs(right) * rows) / 2;
  return (cell) => {
    const column = cell % columns;
    const x = column + 0.5 + dx - columns / 2;
    const y = (cell - column) / columns + 0.5 + dy - rows / 2;
    const at = Math.max(0, Math.min(KNOTS - 1, (((y * right - x * up) / across + 1) / 2) * (KNOTS - 1)));
    const knot = Math.min(KNOTS - 2, Math.floor(at));
    const part = at - knot;
    return x * right + y * up - ((knots[knot] as number) * (1 - part) + (knots[knot + 1] as number) * part);
  };
}

/**
 * The pairs that an edge tells apart, and those that it comes to where it is
 * moved so far: the others say nothing of it. So many more of them can be asked
 * in a large chart; each `counts` as if all pairs were thinned alike.
 */
function pairsNear(
  edge: Edge,
  { heights, counts, columns, rows }: Field,
  moved: number,
): { readonly pairs: readonly Pair[]; readonly counts: number } {
  const all = pairsOf(heights, counts, columns, Infinity);
  if (all.length <= PAIRS_FOLLOWED) return { pairs: all, counts: 1 };
  const out = outOfEdge(edge, { heights, counts, columns, rows });
  const far = NEAR_WIDTHS * edge.width + moved;
  const near = all.filter(({ one }) => Math.abs(out(one)) <= far);
  const step = Math.max(1, Math.ceil(near.length / PAIRS_FOLLOWED));
  return { pairs: near.filter((_, i) => i % step === 0), counts: (step * PAIRS_FOLLOWED) / all.length };
}

/** The edge moved, turned, bent, softened and deepened as long as it explains more; moved by so many cells at first. */
export function followed(start: Edge, field: Field, moved: number, rounds: number): Tried {
  const { pairs, counts } = pairsNear(start, field, 2 * moved);
  // A cell is in many pairs; its shade is worked out once.
  const cells = [...new Set(pairs.flatMap(({ one, other }) => [one, other]))];
  const shades = new Float64Array(field.columns * field.rows);
  const gainOf = (edge: Edge): number => {
    const shadeAtCell = shadeBy(edge, field);
    for (const cell of cells) shades[cell] = shadeAtCell(cell);
    let gain = 0;
    for (const { one, other, difference, weight } of pairs) {
      const change = (shades[other] as number) - (shades[one] as number);
      if (change !== 0) gain += weight * (cost(difference, PAIR_SCALE) - cost(difference - change, PAIR_SCALE));
    }
    return gain * counts;
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
  let turn = Math.min(MOST_TURNED, (2 * moved) / Math.max(field.columns, field.rows));
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

/** The edge that lies straight so far out. */
export function straightAt(place: number, edge: Omit<Edge, 'knots'>): Edge {
  return { ...edge, knots: Array<number>(KNOTS).fill(place) };
}
