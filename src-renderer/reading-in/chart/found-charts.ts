/** Charts that were found on a photo, and which of them four corners mean. Pure. */
import { sideLengths, type Corners, type FoundChart } from '@shared/reading/index.ts';

/** A found chart, and its counts as they are from its first corner. */
export interface FoundAt {
  /** Its number among those that were found. */
  readonly chart: number;
  readonly columns: number;
  readonly rows: number;
}

/** Corners that lie off by no more than this share of a cell mean the same chart: they are set by hand. */
const MOST_OFF = 0.5;

/**
 * The found chart that has these corners, whichever of them is said to be its
 * top left; null if none has. Corners that are put right by a little keep the
 * counts that were found with them.
 */
export function foundAt(charts: readonly FoundChart[], corners: Corners): FoundAt | null {
  for (const [chart, { corners: found, columns, rows }] of charts.entries()) {
    const { across, up } = sideLengths(found);
    const most = MOST_OFF * Math.min(across / columns, up / rows);
    let seen: Corners = found;
    for (let quarters = 0; quarters < 4; quarters++) {
      const isSame = seen.every(({ x, y }, index) => {
        const corner = corners[index];
        return corner !== undefined && Math.hypot(x - corner.x, y - corner.y) <= most;
      });
      if (isSame) return quarters % 2 === 0 ? { chart, columns, rows } : { chart, columns: rows, rows: columns };
      seen = turnedClockwise(seen);
    }
  }
  return null;
}

/** The corners of the same chart, which is read turned clockwise by a quarter. */
export function turnedClockwise([topLeft, topRight, bottomRight, bottomLeft]: Corners): Corners {
  return [bottomLeft, topLeft, topRight, bottomRight];
}
