/** The JSON of `read`. */
import type { ChartReading, CountProposal, FoundChart, GridProposal } from '@shared/reading/index.ts';

export interface ReadJson {
  readonly columns: number;
  readonly rows: number;
  /** The chart that was found in the picture, with its corners in pixels, clockwise from its top left; null where corners were given. */
  readonly found: FoundChart | null;
  /** What was counted between given corners, each with a confidence from 0 to 1; null where both counts were given. */
  readonly counted: { readonly columns: CountProposal | null; readonly rows: CountProposal | null } | null;
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
  found: FoundChart | null,
  counted: GridProposal | null,
  file: string,
  replaced: boolean,
): ReadJson {
  const { width, height } = reading.grid;
  return {
    columns: width,
    rows: height,
    found,
    counted,
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
