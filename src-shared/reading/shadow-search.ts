/** Straight edges of shadows, looked for in all directions. */
import { cost, LEAST_WIDTH, MOST_TURNED, shadeAt, straightAt, type Field, type Tried } from './shadow-edge.ts';
import { pairsOf, type Pair } from './surface.ts';

/** Edges looked for: their directions, how many widths from the least one on, how deep (as logarithms), and the most places along a direction. */
const DIRECTIONS = Array.from({ length: Math.round((2 * Math.PI) / (2 * MOST_TURNED)) }, (_, i) => 2 * MOST_TURNED * i);
const WIDTHS = 3;
const DEPTHS = [0.14, 0.28, 0.45, 0.65] as const;
const MOST_PLACES = 48;
const LEAST_STEP = 0.6;

/** A pair that an edge changes by less than this share of its depth is left out. */
const LEAST_CHANGE = 0.04;

/** Pairs further from an edge than this lie wholly in its shadow or out of it. */
const NEAR_WIDTHS = 4;
const NEAR_CELLS = 2;

/** Pairs asked where edges are looked for all over a chart, and how exactly they are fitted (a logarithm). */
const PAIRS_SEARCHED = 1_600;
const SEARCH_SCALE = 0.15;

/** Near the rim edges are sought no wider than this, in cells, among at most so many pairs in each direction. */
const WIDEST_AT_RIM = 1;
const PAIRS_AT_RIM = 4_000;

/** The best edge of each direction, the best first. */
export function searched(field: Field): Tried[] {
  const pairs = pairsOf(field.heights, field.counts, field.columns, PAIRS_SEARCHED);
  const widest = Math.max(1, Math.max(field.columns, field.rows) / 40);
  return bestFirst((angle) => bestOf(angle, outsOf(angle, field), pairs, widest, Infinity));
}

/** {@link searched}, but for those alone that reach no more than so many cells into the chart. */
export function searchedAtRim(field: Field, reach: number): Tried[] {
  const pairs = pairsOf(field.heights, field.counts, field.columns, Infinity);
  return bestFirst((angle) => {
    const outs = outsOf(angle, field);
    const last = reach - outs.far;
    const most = last + NEAR_WIDTHS * WIDEST_AT_RIM + NEAR_CELLS;
    const near = pairs.filter(({ one }) => (outs.of[one] as number) < most);
    const step = Math.ceil(near.length / PAIRS_AT_RIM);
    return bestOf(angle, outs, step > 1 ? near.filter((_, i) => i % step === 0) : near, WIDEST_AT_RIM, last);
  });
}

function bestFirst(bestAt: (angle: number) => Tried | null): Tried[] {
  return DIRECTIONS.flatMap((angle) => bestAt(angle) ?? []).sort((one, other) => other.gain - one.gain);
}

/** How far out in a direction each cell lies from the chart's middle, and how far the chart reaches, in cells. */
interface Outs {
  readonly of: Float64Array;
  readonly far: number;
}

function outsOf(angle: number, { columns, rows }: Field): Outs {
  const [right, up] = [Math.cos(angle), Math.sin(angle)];
  return {
    of: Float64Array.from({ length: columns * rows }, (_, cell) => {
      const column = cell % columns;
      return (column + 0.5 - columns / 2) * right + ((cell - column) / columns + 0.5 - rows / 2) * up;
    }),
    far: (Math.abs(right) * columns + Math.abs(up) * rows) / 2,
  };
}

/** The best of the edges that lie less far out than `last`. */
function bestOf(angle: number, { of, far }: Outs, pairs: readonly Pair[], widest: number, last: number): Tried | null {
  const placed = pairs
    .map(({ one, other, difference, weight }) => ({
      one: of[one] as number,
      other: of[other] as number,
      difference,
      weight,
    }))
    .sort((a, b) => a.one - b.one);
  let best: Tried | null = null;
  for (let w = 0; w < WIDTHS; w++) {
    const width = LEAST_WIDTH * (widest / LEAST_WIDTH) ** (w / (WIDTHS - 1));
    const step = Math.max(LEAST_STEP, width, (2 * far) / MOST_PLACES);
    let first = 0;
    for (let place = step - far; place < Math.min(far, last); place += step) {
      const near = NEAR_WIDTHS * width + NEAR_CELLS;
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
        best = { edge: straightAt(place, { angle, width, depth }), gain };
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
