/**
 * A chart over two photos that share some of its rows or columns, put together.
 *
 * The second reading is laid over the first with so many rows or columns shared,
 * on each side and for each number of them, and the cells that differ there are
 * counted. Rows that are alike anyway tell nothing: a blank row fits on any
 * other. So of each way to lay it is asked as well how much there is to be
 * compared: every shared row that differs from the one before counts for one,
 * and so does every change of yarn along it. Where more than one way fits well,
 * as with a repeat drawn many times over, the knitter is asked.
 */
import { MOST_COLUMNS, MOST_ROWS, makeGrid, type Grid } from '../grid/index.ts';
import { problemError } from '../problem/index.ts';
import { hexDifference } from './colour-difference.ts';
import { groundFirst } from './ground-first.ts';
import type { JoinSide } from './join-sides.ts';
import type { ChartReading } from './read-chart.ts';
import type { Steps } from './steps.ts';

/** A way to lay the second reading over the first. */
export interface Overlap {
  readonly side: JoinSide;
  /** Rows that both show, or columns where it goes on at the left or right. */
  readonly shared: number;
}

/** An {@link Overlap} that was tried. */
export interface TriedOverlap extends Overlap {
  /** Cells of the shared part that differ. */
  readonly differing: number;
  /** How much there is to be compared. */
  readonly told: number;
}

/** How yarns of two readings are known to be one: by their colours, or by standing in the same cells, where colours say nothing (symbols in one ink). */
export type SameYarns = 'colours' | 'places';

/** Of the cells that both show so many may differ. */
const MOST_DIFFERING = 0.05;

/** Less than this to be compared may fit by chance: it joins nothing by itself … */
const LEAST_TOLD = 8;

/** … but may be what is meant where several ways fit. */
const WORTH_ASKING = 4;

/** A way that has this many times as much to be compared as any other that fits is the one. */
const CLEARLY_MORE = 3;

/** Under another light the same yarn is read this much apart (CIEDE2000); yarns of one chart are further apart. */
const ALIKE = 16;

/**
 * The ways in which the second reading may go on from the first, the likeliest
 * first: one where it is clear, none where nothing fits. Throws `charts-differ-in-size`
 * where neither rows nor columns agree in number.
 */
export function* overlapsOf(first: ChartReading, second: ChartReading, by: SameYarns): Steps<readonly TriedOverlap[]> {
  const ways = waysToLay(first.grid, second.grid);
  const all: (TriedOverlap & { readonly cells: number })[] = [];
  for (const way of ways) {
    yield { stage: 'join', done: all.length / ways.length };
    all.push(tried(first, second, way, by));
  }
  const fitting = all
    .filter(({ differing, told, cells }) => told >= WORTH_ASKING && differing <= MOST_DIFFERING * cells)
    .sort((a, b) => b.told - a.told || a.differing - b.differing);
  const [best, next] = fitting.filter(({ told }) => told >= LEAST_TOLD);
  if (!best) return [];
  const likely = !next || best.told >= CLEARLY_MORE * next.told ? [best] : fitting;
  return likely.map(({ side, shared, differing, told }) => ({ side, shared, differing, told }));
}

/**
 * One reading of both. Where they differ the surer one holds, and the cell is
 * doubtful. Throws `charts-differ-in-size` where they cannot be laid so, and
 * `motif-too-large`.
 */
export function joinCharts(first: ChartReading, second: ChartReading, overlap: Overlap, by: SameYarns): ChartReading {
  const [one, other] = [first.grid, second.grid];
  const { right, up } = offsetOf(one, other, overlap);
  const [left, bottom] = [Math.min(0, right), Math.min(0, up)];
  const width = Math.max(one.width, right + other.width) - left;
  const height = Math.max(one.height, up + other.height) - bottom;
  if (width > MOST_COLUMNS || height > MOST_ROWS) {
    throw problemError('motif-too-large', { width, height, mostWidth: MOST_COLUMNS, mostHeight: MOST_ROWS });
  }
  const colours = [...first.colours];
  const yarns = sameYarns(first, second, overlap, by).map((yarn, index) => {
    return yarn ?? colours.push(second.colours[index] as string) - 1;
  });
  const grid = makeGrid(width, height);
  const confidence = new Float32Array(width * height).fill(-1);
  const doubtful = new Uint8Array(width * height);
  const lay = (reading: ChartReading, column: number, row: number, yarnOf: (cell: number) => number): void => {
    reading.grid.cells.forEach((cell, at) => {
      const x = column + (at % reading.grid.width);
      const y = row + Math.floor(at / reading.grid.width);
      const to = y * width + x;
      const [yarn, sure] = [yarnOf(cell), reading.confidence[at] as number];
      const before = confidence[to] as number;
      const differs = before >= 0 && grid.cells[to] !== yarn;
      if (sure > before) {
        grid.cells[to] = yarn;
        confidence[to] = sure;
        doubtful[to] = reading.doubtful[at] as number;
      }
      if (differs) {
        confidence[to] = againstAnother(Math.max(sure, before), Math.min(sure, before));
        doubtful[to] = 1;
      }
    });
  };
  lay(first, -left, -bottom, (cell) => cell);
  lay(second, right - left, up - bottom, (cell) => yarns[cell] as number);
  return { ...groundFirst(grid, colours), ground: 0, confidence, doubtful };
}

/** How sure the surer of two readings is that say different things: one is right, as likely as each was (Bayes). */
function againstAnother(surer: number, other: number): number {
  const [one, two] = [surer * (1 - other), other * (1 - surer)];
  return one + two === 0 ? 0.5 : one / (one + two);
}

/** The most that two photos share at each side where they may meet, each with something of its own; nothing at sides where they do not fit. Throws `charts-differ-in-size`. */
export function mostShared(one: Grid, other: Grid): Readonly<Partial<Record<JoinSide, number>>> {
  return Object.fromEntries(waysToLay(one, other).map(({ side, shared }) => [side, shared]));
}

/** Every way with something shared and something new. */
function waysToLay(one: Grid, other: Grid): Overlap[] {
  const upTo = (a: number, b: number): number[] => Array.from({ length: Math.min(a, b) - 1 }, (_, i) => i + 1);
  const ways = (sides: readonly JoinSide[], shared: readonly number[]): Overlap[] =>
    sides.flatMap((side) => shared.map((many) => ({ side, shared: many })));
  const isAsWide = one.width === other.width;
  const isAsHigh = one.height === other.height;
  if (!isAsWide && !isAsHigh) throw differInSize(one, other);
  return [
    ...(isAsWide ? ways(['above', 'below'], upTo(one.height, other.height)) : []),
    ...(isAsHigh ? ways(['right', 'left'], upTo(one.width, other.width)) : []),
  ];
}

function differInSize(one: Grid, other: Grid): Error {
  const { width, height } = one;
  return problemError('charts-differ-in-size', { width, height, otherWidth: other.width, otherHeight: other.height });
}

/** Where the second's lower left cell stands, in cells from the first's. Throws `charts-differ-in-size`. */
export function offsetOf(one: Grid, other: Grid, { side, shared }: Overlap): { right: number; up: number } {
  const isUpright = side === 'above' || side === 'below';
  const fits = isUpright ? one.width === other.width : one.height === other.height;
  if (!fits) throw differInSize(one, other);
  switch (side) {
    case 'above':
      return { right: 0, up: one.height - shared };
    case 'below':
      return { right: 0, up: shared - other.height };
    case 'right':
      return { right: one.width - shared, up: 0 };
    case 'left':
      return { right: shared - other.width, up: 0 };
  }
}

/** Lines (rows, or columns where it goes on sideways) of the shared part, each as the yarns of the first and of the second along it. */
function sharedLines(
  one: Grid,
  other: Grid,
  overlap: Overlap,
): { readonly first: number[]; readonly second: number[] }[] {
  const { right, up } = offsetOf(one, other, overlap);
  const isUpright = overlap.side === 'above' || overlap.side === 'below';
  const from = isUpright ? Math.max(0, up) : Math.max(0, right);
  const along = isUpright ? one.width : one.height;
  const cell = (grid: Grid, line: number, place: number): number =>
    grid.cells[isUpright ? line * grid.width + place : place * grid.width + line] as number;
  return Array.from({ length: overlap.shared }, (_, i) => {
    const line = from + i;
    const places = Array.from({ length: along }, (_unused, place) => place);
    return {
      first: places.map((place) => cell(one, line, place)),
      second: places.map((place) => cell(other, line - (isUpright ? up : right), place)),
    };
  });
}

/** Cells of the shared part that differ. Throws `charts-differ-in-size`. */
export function differingIn(first: ChartReading, second: ChartReading, overlap: Overlap, by: SameYarns): number {
  return tried(first, second, overlap, by).differing;
}

function tried(
  first: ChartReading,
  second: ChartReading,
  overlap: Overlap,
  by: SameYarns,
): TriedOverlap & { readonly cells: number } {
  const lines = sharedLines(first.grid, second.grid, overlap);
  const yarns = sameYarns(first, second, overlap, by);
  let [differing, told, cells] = [0, 0, 0];
  lines.forEach((line, i) => {
    const before = lines[i - 1];
    const isNew = !before || line.first.some((yarn, place) => yarn !== before.first[place]);
    const changes = line.first.filter((yarn, place) => place > 0 && yarn !== line.first[place - 1]).length;
    // A line of one yarn alone tells nothing, the first of them.
    if (isNew && (before || changes > 0)) told += 1 + changes;
    differing += line.second.filter((yarn, place) => yarns[yarn] !== line.first[place]).length;
    cells += line.first.length;
  });
  return { ...overlap, differing, told, cells };
}

/** For each yarn of the second reading that of the first which it is, or null for one that is new. */
function sameYarns(first: ChartReading, second: ChartReading, overlap: Overlap, by: SameYarns): (number | null)[] {
  const found: (number | null)[] = second.colours.map(() => null);
  const taken = new Set<number>();
  const match = (pairs: readonly { readonly one: number; readonly other: number }[]): void => {
    for (const { one, other } of pairs) {
      if (found[other] !== null || taken.has(one)) continue;
      found[other] = one;
      taken.add(one);
    }
  };
  if (by === 'colours') match(alikePairs(first.colours, second.colours));
  const together = new Map<number, number>();
  for (const line of sharedLines(first.grid, second.grid, overlap)) {
    line.first.forEach((one, place) => {
      const pair = one * second.colours.length + (line.second[place] as number);
      together.set(pair, (together.get(pair) ?? 0) + 1);
    });
  }
  const often = [...together].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  match(
    often.map(([pair]) => ({
      one: Math.floor(pair / second.colours.length),
      other: pair % second.colours.length,
    })),
  );
  return found;
}

/** Pairs of colours that may be one yarn, the most alike first. */
function alikePairs(
  one: readonly string[],
  other: readonly string[],
): { readonly one: number; readonly other: number }[] {
  return one
    .flatMap((colour, i) => other.map((another, j) => ({ one: i, other: j, apart: hexDifference(colour, another) })))
    .filter(({ apart }) => apart <= ALIKE)
    .sort((a, b) => a.apart - b.apart);
}
