/** Two photos of one chart, read and put together. */
import type { Grid } from '@shared/grid/index.ts';
import { problemError } from '@shared/problem/index.ts';
import {
  differingIn,
  finish,
  joinCharts,
  overlapsOf,
  type ChartReading,
  type Corners,
  type FoundChart,
  type GridProposal,
  type Levels,
  type Overlap,
} from '@shared/reading/index.ts';

/** A photo that was read, and what was counted in it. */
export interface ReadPhoto {
  readonly reading: ChartReading;
  /** The chart as it was found; null where its corners were given. */
  readonly found: FoundChart | null;
  readonly counted: GridProposal | null;
  /** Corners that were given, as they were put on the lines near them; null where they stayed as they are. */
  readonly settled: Corners | null;
}

/** How the second photo goes on from the first. */
export interface Joined extends Overlap {
  /** Cells that both show and that differ. */
  readonly differing: number;
  readonly second: ReadPhoto;
}

/**
 * One reading of both, as `given` says or where they are found to meet. Throws
 * `charts-differ-in-size`, `charts-meet-nowhere`, `charts-meet-openly`, or
 * `motif-too-large`.
 */
export function joinPhotos(
  first: ReadPhoto,
  second: ReadPhoto,
  levels: Levels,
  given: Overlap | undefined,
): { readonly reading: ChartReading; readonly joined: Joined } {
  // Symbols in one ink have no colours by which they could be known again.
  const by = levels.kind === 'symbols' ? 'places' : 'colours';
  if (given) assertShared(first.reading.grid, second.reading.grid, given);
  const overlap = given ?? found(finish(overlapsOf(first.reading, second.reading, by)));
  const differing = differingIn(first.reading, second.reading, overlap, by);
  return {
    reading: joinCharts(first.reading, second.reading, overlap, by),
    joined: { side: overlap.side, shared: overlap.shared, differing, second },
  };
}

/** Something of each photo must be its own. Throws `not-a-whole-number`. */
function assertShared(one: Grid, other: Grid, { side, shared }: Overlap): void {
  const isUpright = side === 'above' || side === 'below';
  const most = (isUpright ? Math.min(one.height, other.height) : Math.min(one.width, other.width)) - 1;
  if (shared > most) throw problemError('not-a-whole-number', { text: String(shared), least: 1, most }, '--overlap');
}

function found([best, ...others]: readonly Overlap[]): Overlap {
  if (!best) throw problemError('charts-meet-nowhere', {});
  if (others.length === 0) return best;
  const ways = [best, ...others].map(({ side, shared }) => ({ side, shared }));
  throw problemError('charts-meet-openly', { ways }, '--overlap');
}
