/** Photographs read back and held against what was drawn. */
import {
  finish,
  photoOf,
  proposeGrid,
  readCells,
  settledCorners,
  type ChartReading,
  type Corners,
  type Levels,
  type Photo,
} from '@shared/reading/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import type { ToldBy } from '../generate/charts/kinds.ts';
import type { Photograph } from '../generate/charts/photographs.ts';
import { Chances } from '../generate/charts/random.ts';

/** Bands of sureness, from so much on to the next: most cells are in the last. */
export const SURE_FROM = [0, 0.5, 0.8, 0.9, 0.95, 0.98, 0.99, 0.999] as const;

export interface Outcome {
  readonly cells: number;
  readonly wrong: number;
  /** Wrong, and not marked as doubtful. */
  readonly unmarked: number;
  readonly marked: number;
  /** As many yarns as were drawn, without being asked. */
  readonly yarnsRight: boolean;
  /** The number of yarns was left open, and given as a person would. */
  readonly asked: boolean;
  /** Columns and rows as proposed are those drawn. */
  readonly countsRight: boolean;
  /** The reading was refused, with this code. */
  readonly refused: string | null;
  /** For each band of sureness, how many cells were said to be so sure, and how many of them are right. */
  readonly sure: readonly { readonly said: number; readonly right: number }[];
}

export function levelsFor(toldBy: ToldBy): Levels {
  return toldBy === 'ink' ? { kind: 'ink', figure: 'dark' } : { kind: toldBy, count: null };
}

/** Reads the photograph with corners each off by up to `pixels` in both directions, put on the lines near them. */
export function tried(photograph: Photograph, pixels: number): Outcome {
  const { grid, picture } = photograph;
  const photo = photoOf(picture);
  const set = finish(settledCorners(photo, cornersOff(photograph, pixels), grid.width, grid.height));
  return readWithin(photograph, photo, set);
}

/** Reads the chart between `set`, with as many columns and rows as it has. */
export function readWithin(photograph: Photograph, photo: Photo, set: Corners): Outcome {
  const { grid, toldBy, yarns } = photograph;
  const cells = grid.cells.length;
  try {
    const proposal = finish(proposeGrid(photo, set));
    const countsRight = proposal.columns?.count === grid.width && proposal.rows?.count === grid.height;
    const { reading, asked } = answered((levels) => finish(readCells(photo, set, grid.width, grid.height, levels)), {
      toldBy,
      yarns,
    });
    const yarnsRight = !asked && reading.colours.length === yarns;
    return { ...held(reading, grid), cells, countsRight, yarnsRight, asked, refused: null };
  } catch (thrown) {
    const refused = codeOf(thrown);
    return {
      cells,
      wrong: 0,
      unmarked: 0,
      marked: cells,
      yarnsRight: false,
      asked: false,
      countsRight: false,
      refused,
      sure: [],
    };
  }
}

/** The corners, each off by up to so many pixels in both directions. */
export function cornersOff({ seed, corners, picture }: Photograph, pixels: number): Corners {
  const chances = new Chances(seed + 1);
  return corners.map(({ x, y }) => ({
    x: within(x + chances.between(-pixels, pixels), picture.width),
    y: within(y + chances.between(-pixels, pixels), picture.height),
  })) as unknown as Corners;
}

/** What `read` gives; where it asks for the number of yarns, the number is given. */
export function answered<T>(
  read: (levels: Levels) => T,
  { toldBy, yarns }: Pick<Photograph, 'toldBy' | 'yarns'>,
): { readonly reading: T; readonly asked: boolean } {
  try {
    return { reading: read(levelsFor(toldBy)), asked: false };
  } catch (thrown) {
    if (toldBy === 'ink' || codeOf(thrown) !== 'yarns-open') throw thrown;
    return { reading: read({ kind: toldBy, count: yarns }), asked: true };
  }
}

function codeOf(thrown: unknown): string {
  return String((thrown as { problem?: { code: string } }).problem?.code ?? thrown);
}

/**
 * 1 for each cell that is read as it was drawn. Yarns are matched by being
 * most often at the same place, one to one, since a reading names them in its
 * own order.
 */
export function isRight(read: Uint8Array, drawn: Uint8Array): Uint8Array {
  const together = new Map<number, number>();
  read.forEach((yarn, cell) => {
    const pair = yarn * 256 + (drawn[cell] as number);
    together.set(pair, (together.get(pair) ?? 0) + 1);
  });
  const meant = new Map<number, number>();
  const taken = new Set<number>();
  for (const [pair] of [...together].sort((a, b) => b[1] - a[1])) {
    const [yarn, there] = [pair >> 8, pair & 255];
    if (meant.has(yarn) || taken.has(there)) continue;
    meant.set(yarn, there);
    taken.add(there);
  }
  return read.map((yarn, cell) => (meant.get(yarn) === drawn[cell] ? 1 : 0));
}

/** A reading against what was drawn. */
function held(reading: ChartReading, grid: Grid): Pick<Outcome, 'wrong' | 'unmarked' | 'marked' | 'sure'> {
  const right = isRight(reading.grid.cells, grid.cells);
  let [wrong, unmarked, marked] = [0, 0, 0];
  const sure = SURE_FROM.map(() => ({ said: 0, right: 0 }));
  right.forEach((isSo, cell) => {
    const isMarked = reading.doubtful[cell] === 1;
    if (isSo === 0) wrong++;
    if (isMarked) marked++;
    if (isSo === 0 && !isMarked) unmarked++;
    const said = reading.confidence[cell] as number;
    const band = sure[SURE_FROM.findLastIndex((from) => said >= from)] as (typeof sure)[number];
    band.said++;
    band.right += isSo;
  });
  return { wrong, unmarked, marked, sure };
}

function within(value: number, most: number): number {
  return Math.max(0, Math.min(most, value));
}
