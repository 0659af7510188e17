/** The cells of a chart sorted by yarn, out of what was seen in each of them. */
import { problemError } from '../problem/index.ts';
import type { SortedCells } from './confidence.ts';
import { sortLevels, type FigureLevel } from './levels.ts';
import { lightOn, underEvenLight, type Light } from './light.ts';
import { luma } from './luma.ts';
import { slopesInside, type CellSamples } from './sample.ts';
import { sortColours, type Sorted } from './sort-colours.ts';
import type { Steps } from './steps.ts';
import { filledOtherwise } from './strokes.ts';

/**
 * What is told apart: ink on paper (or holes in a card), so many colours, or so
 * many symbols drawn in one ink; null: as many as there are.
 */
export type Levels =
  | { readonly kind: 'ink'; readonly figure: FigureLevel }
  | { readonly kind: 'colours' | 'symbols'; readonly count: number | null };

/** {@link Levels} that are told by the colours of cells, and not by what is drawn into them. */
export type ColourLevels = Exclude<Levels, { kind: 'symbols' }>;

/**
 * Two yarns lie at least so far apart, or may be one; and further where what
 * was made one lay nearly as far, and may be two: of symbols it is asked then. Of photographs 0 to 160 and
 * 10000 to 10530 of `npm run photos` nearly all with too many or too few yarns
 * found are on the far side.
 */
const SURELY_TWO = { colours: 1.25, symbols: 1.4 };
const HARDLY_ONE = { colours: 0.88, symbols: 0.85 };
const SURELY_TWO_BESIDE = { colours: 2, symbols: Infinity };

/**
 * `cells` under even light, sorted; each has `cellPixels` of the photo across
 * or up, whichever is fewer. Throws `one-yarn-only` and `yarns-open`.
 */
export function* sortSeen(cells: CellSamples, levels: ColourLevels, cellPixels: number): Steps<SortedCells> {
  yield { stage: 'even-light', done: 0 };
  const { even, otherwise, onEdge } = evenlyLit(cells, levels);
  yield { stage: 'sort-colours', done: 0 };
  const sorted = sortedBy(even, levels);
  yield { stage: 'sort-colours', done: 0.6 };
  const found = sorted.colours.length;
  const other = levels.kind === 'ink' ? sortLevels(otherwise, levels.figure) : sortColours(otherwise, found);
  yield { stage: 'sort-colours', done: 1 };
  return {
    ...sorted,
    columns: cells.columns,
    cellPixels,
    parted: partedFrom(sorted.yarns, other.yarns),
    onEdge,
    otherwise: levels.kind === 'ink' ? filledOtherwise(sorted.yarns, cells.unevenness) : null,
  };
}

function sortedBy(even: CellSamples, levels: ColourLevels): Sorted {
  return levels.kind === 'ink'
    ? notBlank(sortLevels(even, levels.figure))
    : asSure(sortColours(even, levels.count), 'colours');
}

/** 1 for each cell that another sorting gives another yarn; the other's yarns are those they mostly meet. */
function partedFrom(yarns: Uint8Array, others: Uint8Array): Uint8Array {
  const together = new Map<number, Map<number, number>>();
  others.forEach((other, cell) => {
    const met = together.get(other) ?? new Map<number, number>();
    const yarn = yarns[cell] as number;
    together.set(other, met.set(yarn, (met.get(yarn) ?? 0) + 1));
  });
  const meant = new Map(
    [...together].map(([other, met]) => [other, [...met].reduce((most, one) => (one[1] > most[1] ? one : most))[0]]),
  );
  return yarns.map((yarn, cell) => (meant.get(others[cell] as number) === yarn ? 0 : 1));
}

/** One yarn alone, and a number that the evidence leaves open, are asked for and never assumed. */
export function asSure(sorted: Sorted, by: 'colours' | 'symbols'): Sorted {
  if (sorted.colours.length === 1) throw problemError('one-yarn-only', { by });
  const { evidence } = sorted;
  const least = evidence && evidence.merged > HARDLY_ONE[by] ? SURELY_TWO_BESIDE[by] : SURELY_TWO[by];
  if (evidence && evidence.closest < least) {
    throw problemError('yarns-open', { by, found: sorted.colours.length });
  }
  return sorted;
}

function notBlank(sorted: Sorted): Sorted {
  if (!sorted.yarns.includes(1)) throw problemError('one-yarn-only', { by: 'ink' });
  return sorted;
}

function evenlyLit(
  samples: CellSamples,
  levels: ColourLevels,
): { readonly even: CellSamples; readonly otherwise: CellSamples; readonly onEdge: Uint8Array | null } {
  const { columns, rows, colours, lightest } = samples;
  // Strokes leave paper between them, which shows the light whatever is drawn.
  const isOnPaper = levels.kind === 'ink' && levels.figure === 'dark';
  const shown = isOnPaper ? lightest : Float32Array.from(lightest, (_, cell) => luma(colours, cell * 3));
  const lights = lightOn(shown, columns, rows, slopesInside(samples));
  const under = (light: Light): CellSamples => ({
    ...samples,
    colours: underEvenLight(samples.colours, light),
    means: underEvenLight(samples.means, light),
    wholes: underEvenLight(samples.wholes, light),
    rims: underEvenLight(samples.rims, light),
    quarters: underEvenLight(samples.quarters, light, 4),
  });
  return { even: under(lights.light), otherwise: under(lights.otherwise), onEdge: lights.onEdge };
}
