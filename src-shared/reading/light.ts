/**
 * Takes uneven light off the cells of a chart: a lamp to one side, the shadow
 * of a hand, a page that bends away.
 *
 * Light changes slowly and colours change at once. So neighbouring cells that
 * differ a little are taken to differ by light, and those that differ much are
 * not asked (each pair counts the less the more it differs, judged anew a few
 * times). Through all these small slopes a smooth surface is laid: the light,
 * known up to a constant. A shadow with a sharp edge is looked for beside it
 * (shadow.ts). Nothing is assumed about where paper is, so an all-over motif
 * without white is no trouble. Worked in logarithms, where light is a sum.
 */
import { nthOf } from './nth.ts';
import type { Slopes } from './shadow-inside.ts';
import { shadowOn } from './shadow.ts';
import { pairsOf, Surface, type Pair } from './surface.ts';

/** How much brighter than the usual each cell is lit, as a factor. */
export type Light = Float32Array;

/**
 * The light as it most likely is, and what it is otherwise: without the shadow
 * that was found, or bent less. Where a block of the figure is taken for shade,
 * the two part.
 */
export interface Lights {
  readonly light: Light;
  readonly otherwise: Light;
  /** 1 for each cell beside which a shadow begins; null where none was found. */
  readonly onEdge: Uint8Array | null;
}

/** Nodes of the surface across and up; between them it is straight. Few while a shadow is looked for, which many would follow; fewest where no block of a figure may be followed. */
const NODES = 12;
const FEW_NODES = 3;
const FEWEST_NODES = 2;

/** A shadow begins where it changes by this share of all that it is, from one side of a cell to the other. */
const EDGE_SHARE = 0.3;

/** Pairs looked at; larger charts are looked at in part. */
const MOST_PAIRS = 30_000;

/** Rounds of judging pairs anew. */
const ROUNDS = 5;

/** Differences below this share are never called much. */
const LEAST_SCALE = 0.03;

/** Darker than this, 0 … 255, a cell says little about light. */
const DARK = 40;

/**
 * The light on each cell. `levels` is how light each cell is, 0 … 255, row by
 * row; `slopes` how light changes inside the cells, without which no shadow
 * is looked for.
 */
export function lightOn(levels: ArrayLike<number>, columns: number, rows: number, slopes: Slopes | null): Lights {
  const { heights, counts } = heightsOf(levels);
  const laidThrough = (those: Float64Array, nodes: number): Float64Array => {
    const pairs = pairsOf(those, counts, columns, MOST_PAIRS);
    const surface = laid(pairs, columns, rows, nodes);
    return those.map((_, cell) => surface.at(cell));
  };
  if (heights.length === 1) return { light: Float32Array.of(1), otherwise: Float32Array.of(1), onEdge: null };
  const shade =
    slopes === null ? null : shadowOn(heights, counts, slopes, columns, (those) => laidThrough(those, FEW_NODES));
  if (shade === null) {
    return {
      light: asFactors(laidThrough(heights, NODES)),
      otherwise: asFactors(laidThrough(heights, FEWEST_NODES)),
      onEdge: null,
    };
  }
  const smooth = laidThrough(less(heights, shade), NODES);
  return {
    light: asFactors(smooth.map((height, cell) => height + (shade[cell] as number))),
    otherwise: asFactors(laidThrough(heights, NODES)),
    onEdge: edgeOf(shade, columns),
  };
}

/** The logarithm of how light each cell is, and how much it counts. */
function heightsOf(levels: ArrayLike<number>): { readonly heights: Float64Array; readonly counts: Float64Array } {
  return {
    heights: Float64Array.from(levels, (level) => Math.log(Math.max(4, level))),
    counts: Float64Array.from(levels, (level) => Math.min(1, (level / DARK) ** 2)),
  };
}

/** Pairs looked at where the light need only be known about. */
const FEW_PAIRS = 2_000;

/** About the light on each cell, at once: as {@link lightOn} has it, by fewer pairs, stiffly, and without a shadow. */
export function roughLight(levels: ArrayLike<number>, columns: number, rows: number): Light {
  if (levels.length === 1) return Float32Array.of(1);
  const { heights, counts } = heightsOf(levels);
  const surface = laid(pairsOf(heights, counts, columns, FEW_PAIRS), columns, rows, FEW_NODES);
  return asFactors(heights.map((_, cell) => surface.at(cell)));
}

/** The cells whose neighbours, corners among them, lie in shadows of different depth. */
function edgeOf(shade: Float64Array, columns: number): Uint8Array {
  const rows = shade.length / columns;
  const least = EDGE_SHARE * (Math.max(...shade) - Math.min(...shade));
  return Uint8Array.from(shade, (_, cell) => {
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    let [deepest, lightest] = [Infinity, -Infinity];
    for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
      for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
        const there = shade[y * columns + x] as number;
        [deepest, lightest] = [Math.min(deepest, there), Math.max(lightest, there)];
      }
    }
    return lightest - deepest > least ? 1 : 0;
  });
}

/** Divides each cell's colour by the light on it; `parts` colours a cell. */
export function underEvenLight(colours: Float32Array, light: Light, parts = 1): Float32Array {
  return colours.map((value, i) => value / (light[Math.floor(i / (3 * parts))] as number));
}

function laid(pairs: readonly Pair[], columns: number, rows: number, nodes: number): Surface {
  const surface = new Surface(columns, rows, nodes);
  let scale = Math.max(LEAST_SCALE, 1.5 * medianOf(pairs.map(({ difference }) => Math.abs(difference))));
  for (let round = 0; round < ROUNDS; round++) {
    surface.fit(pairs, scale);
    const left = pairs.map(({ one, other, difference }) =>
      Math.abs(difference - (surface.at(other) - surface.at(one))),
    );
    scale = Math.max(LEAST_SCALE, 1.5 * medianOf(left));
  }
  return surface;
}

function less(heights: Float64Array, known: Float64Array): Float64Array {
  return heights.map((height, cell) => height - (known[cell] as number));
}

/** As factors, the brightest lit tenth of the cells being 1: colours come out as in the best light. */
function asFactors(heights: Float64Array): Light {
  const best = heights.slice().sort()[Math.floor(0.9 * (heights.length - 1))] as number;
  return Float32Array.from(heights, (height) => Math.exp(height - best));
}

function medianOf(values: readonly number[]): number {
  return nthOf([...values], values.length >> 1) as number;
}
