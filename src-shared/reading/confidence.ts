/**
 * How sure each cell of a reading is, as a probability that its yarn is right.
 *
 * Facts of a cell that go with mistakes are weighed and summed, and the sum is
 * turned into a probability (logistic regression). The weights are measured:
 * `npm run photos -- --calibrate` reads drawn photographs, whose truth is
 * known, and prints them; `npm run photos` prints how they hold on others.
 */
import type { Sorted } from './sort-colours.ts';

export interface Confidence {
  /** For each cell, 0 … 1, how probably its yarn is right. */
  readonly confidence: Float32Array;
  /** 1 for each cell that a person should look at. */
  readonly doubtful: Uint8Array;
}

/** Cells sorted by yarn, so many a row, each with so many pixels of the photo across or up, whichever is fewer. */
export interface SortedCells extends Sorted {
  readonly columns: number;
  readonly cellPixels: number;
  /** 1 for each cell that comes out as another yarn if light is otherwise than most likely; null where light tells nothing. */
  readonly parted: Uint8Array | null;
  /** 1 for each cell beside which a shadow begins; null where none does. */
  readonly onEdge: Uint8Array | null;
  /** 1 for each cell that is filled as those of another yarn are; null where filling tells nothing. */
  readonly otherwise: Uint8Array | null;
}

/** Below this a cell is doubtful: of a fair photo that is about one in a hundred, and nearly every wrong one among them. */
export const DOUBTFUL_BELOW = 0.998;

/** Cells of a yarn that has no more than this, and no more than this share of all, are looked at, each of them: dirt and glare make such too. */
const HANDFUL = 4;
const HANDFUL_SHARE = 0.02;

/**
 * A cell of which so many quarters more than usual side with another yarn may
 * be half of each. On photographs, which have no such cells, 9 in 10 that look
 * so are right (248 of 276, as told below).
 */
const HALF = 2;
const HALF_SURE = 0.9;

/**
 * Cells that part under two lights are as little sure, while they are a small
 * share of all: where more do, the light is surely not that other one.
 */
const PARTED_SURE = 0.9;
const MOST_PARTED = 0.025;

/** So sure is a cell of a yarn that may be two, or another: it depends on all of them, and no fact of the cell tells it. */
const UNSURE_SURE = 0.9;

/** Beside the edge of a shadow a cell is as little sure from this margin down: light is known there least. */
const EDGE_MARGIN = 0.75;

/** From this margin on a cell is clear of the border to the next yarn. */
const CLEAR_MARGIN = 0.5;

/** Facts are not told further than to this. */
const FURTHEST = 12;
const MOST_UNCLEAR = 0.3;
const MOST_COARSE = 2;

/** A cell of this many pixels shows its sign in full. */
const FINE_PIXELS = 8;

/** What the facts of a cell are, in the order of the weights. */
export const FACTS = [
  'one, in all cells',
  'how near the border to the next yarn',
  'how much nearer than most mistakes are',
  'how far from its yarn against the others of it',
  'quarters more than usual that side with another yarn',
  'one of a handful of its yarn',
  'how few pixels it has',
  'share of its neighbours near a border',
  'share of all cells near a border',
] as const;

/** Which of them the stray quarters are. */
const STRAY_QUARTERS = 4;

export type Weights = readonly number[];

/**
 * Measured by `npm run photos -- --calibrate` on the photographs 10000 to 10190
 * of at most 6,000 cells and about a megapixel, each with exact corners and with
 * corners up to 4 pixels off: 37 wrong of 214,984 cells told by ink or colour.
 * They are right as often as they say on other photographs too (20000 to 20160).
 */
const BY_COLOUR: Weights = [-10.93, 5.62, 1.89, 1.7, 0.28, 0, 0, 3.51, 0.66];

/**
 * Fitted in the same way to the charts of symbols of at most 5,000 cells among
 * the photographs 10000 to 10530 and 20000 to 20540, with exact corners: 34
 * wrong of 115,216 cells, few of them in any one photograph.
 */
const BY_SIGN: Weights = [-13.95, 5.28, 3, 1.29, 0, 0, 2.7, 0, 2.05];

/** How sure the cells are that were told apart by `kind`. */
export function confidenceOf(sorted: SortedCells, kind: 'ink' | 'colours' | 'symbols'): Confidence {
  const facts = factsOf(sorted);
  const weights = kind === 'symbols' ? BY_SIGN : BY_COLOUR;
  const handful = handfulOf(sorted.yarns);
  const parted = sorted.parted && shareOf(sorted.parted) <= MOST_PARTED ? sorted.parted : null;
  const confidence = Float32Array.from(sorted.yarns, (_, cell) => {
    const against = weights.reduce((sum, weight, i) => sum + weight * (facts[cell * FACTS.length + i] as number), 0);
    const isHalf = (facts[cell * FACTS.length + STRAY_QUARTERS] as number) >= HALF;
    const isOnEdge = sorted.onEdge?.[cell] === 1 && (sorted.margins[cell] as number) < EDGE_MARGIN;
    const isUnlike = sorted.otherwise?.[cell] === 1;
    const most = Math.min(
      isHalf || isUnlike ? HALF_SURE : 1,
      isOnEdge || parted?.[cell] === 1 ? PARTED_SURE : 1,
      sorted.unsure?.[cell] === 1 ? UNSURE_SURE : 1,
    );
    return Math.min(most, 1 / (1 + Math.exp(against)));
  });
  const doubtful = Uint8Array.from(confidence, (sure, cell) =>
    sure < DOUBTFUL_BELOW || handful.has(sorted.yarns[cell] as number) ? 1 : 0,
  );
  return { confidence, doubtful };
}

function shareOf(marked: Uint8Array): number {
  return marked.reduce((sum, one) => sum + one, 0) / marked.length;
}

/** The facts of each cell, as many numbers as {@link FACTS}, none below 0; the higher, the less sure. */
export function factsOf({ yarns, margins, distances, strayQuarters, columns, cellPixels }: SortedCells): Float64Array {
  const usual = usualStray(yarns, strayQuarters);
  const handful = handfulOf(yarns);
  const isUnclear = Uint8Array.from(margins, (margin) => (margin < CLEAR_MARGIN ? 1 : 0));
  const unclear = Math.min(MOST_UNCLEAR, isUnclear.reduce((sum, one) => sum + one, 0) / yarns.length);
  const coarse = Math.min(MOST_COARSE, FINE_PIXELS / cellPixels);
  const facts = new Float64Array(yarns.length * FACTS.length);
  yarns.forEach((yarn, cell) => {
    const margin = Math.max(0, margins[cell] as number);
    const distance = Math.max(1, Math.min(FURTHEST, distances[cell] as number));
    facts.set(
      [
        1,
        1 - margin,
        Math.max(0, CLEAR_MARGIN - 0.1 - margin),
        Math.log(distance),
        Math.max(0, (strayQuarters[cell] as number) - (usual.get(yarn) as number)),
        handful.has(yarn) ? 1 : 0,
        coarse,
        shareAround(isUnclear, columns, cell),
        unclear,
      ],
      cell * FACTS.length,
    );
  });
  return facts;
}

/** Yarns of a handful of cells. */
function handfulOf(yarns: Uint8Array): ReadonlySet<number> {
  const cells = new Map<number, number>();
  for (const yarn of yarns) cells.set(yarn, (cells.get(yarn) ?? 0) + 1);
  const handful = Math.min(HANDFUL, HANDFUL_SHARE * yarns.length);
  return new Set([...cells].filter(([, count]) => count <= handful).map(([yarn]) => yarn));
}

/** The share of a cell's neighbours, corners among them, that are marked 1. */
function shareAround(marked: Uint8Array, columns: number, cell: number): number {
  const column = cell % columns;
  let [neighbours, those] = [0, 0];
  for (const up of [-columns, 0, columns]) {
    for (const right of [-1, 0, 1]) {
      const other = marked[cell + up + right];
      if ((up === 0 && right === 0) || column + right < 0 || column + right >= columns || other === undefined) continue;
      neighbours++;
      those += other;
    }
  }
  return neighbours === 0 ? 0 : those / neighbours;
}

/** The middle number of stray quarters of each yarn's cells. */
function usualStray(yarns: Uint8Array, strayQuarters: Uint8Array): Map<number, number> {
  const counts = new Map<number, number[]>();
  yarns.forEach((yarn, cell) => {
    const count = counts.get(yarn) ?? [0, 0, 0, 0, 0];
    count[strayQuarters[cell] as number] = (count[strayQuarters[cell] as number] as number) + 1;
    counts.set(yarn, count);
  });
  return new Map(
    [...counts].map(([yarn, count]) => {
      const half = count.reduce((sum, n) => sum + n, 0) / 2;
      let below = 0;
      const middle = count.findIndex((n) => (below += n) >= half);
      return [yarn, middle];
    }),
  );
}
