/** The JSON of `read`. */
import type { ChartReading, Corners, CountProposal, FoundChart, JoinSide } from '@shared/reading/index.ts';
import type { Joined, ReadPhoto } from '../joined-photos.ts';

interface CountedJson {
  readonly columns: CountProposal | null;
  readonly rows: CountProposal | null;
}

export interface ReadJson {
  readonly columns: number;
  readonly rows: number;
  /** The chart that was found in the picture, with its corners in pixels, clockwise from its top left; null where corners were given. */
  readonly found: FoundChart | null;
  /** What was counted between given corners, each with a confidence from 0 to 1; null where both counts were given. */
  readonly counted: CountedJson | null;
  /** Corners that were given, in pixels, where they were put on the lines near them; else null. */
  readonly settled: Corners | null;
  /** How a second photo goes on from the first; null where there is one alone. */
  readonly joined: {
    readonly side: JoinSide;
    /** Rows, or columns where it goes on sideways, that both show, and how many of their cells differ. */
    readonly shared: number;
    readonly differing: number;
    readonly second: {
      readonly columns: number;
      readonly rows: number;
      readonly found: FoundChart | null;
      readonly counted: CountedJson | null;
      readonly settled: Corners | null;
    };
  } | null;
  /** `#rrggbb`, the ground first. */
  readonly colours: readonly string[];
  /** Cells to look at, counted from 1: row 1 is the bottom row, column 1 the left one. */
  readonly doubtful: readonly { readonly column: number; readonly row: number }[];
  readonly file: string;
  /** True if the file was there and an earlier call had written it. */
  readonly replaced: boolean;
}

export function readJson(
  reading: ChartReading,
  { found, counted, settled }: Omit<ReadPhoto, 'reading'>,
  joined: Joined | null,
  file: string,
  replaced: boolean,
): ReadJson {
  const { width, height } = reading.grid;
  return {
    columns: width,
    rows: height,
    found,
    counted,
    settled,
    joined: joined && {
      side: joined.side,
      shared: joined.shared,
      differing: joined.differing,
      second: {
        columns: joined.second.reading.grid.width,
        rows: joined.second.reading.grid.height,
        found: joined.second.found,
        counted: joined.second.counted,
        settled: joined.second.settled,
      },
    },
    colours: reading.colours,
    doubtful: doubtfulCells(reading),
    file,
    replaced,
  };
}

/** The doubtful cells, bottom row first, each row from the left, both counted from 1. */
export function doubtfulCells({ grid, doubtful }: ChartReading): { column: number; row: number }[] {
  return [...doubtful.keys()]
    .filter((cell) => doubtful[cell] === 1)
    .map((cell) => ({ column: (cell % grid.width) + 1, row: Math.floor(cell / grid.width) + 1 }));
}
