/** Charts that were found on a photo, and which of them four corners mean. Pure. */
import type { Problem } from '@shared/problem/index.ts';
import { sideLengths, turnedBy, type Corners, type FoundChart } from '@shared/reading/index.ts';

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
    for (let quarters = 0; quarters < 4; quarters++) {
      const isSame = turnedBy(found, quarters).every(({ x, y }, index) => {
        const corner = corners[index];
        return corner !== undefined && Math.hypot(x - corner.x, y - corner.y) <= most;
      });
      if (isSame) return quarters % 2 === 0 ? { chart, columns, rows } : { chart, columns: rows, rows: columns };
    }
  }
  return null;
}

/** What a person is told and asked of the charts that were found. */
export type Question =
  | { readonly kind: 'wait' }
  /** Why there is none. */
  | { readonly kind: 'none'; readonly problem: Problem }
  /** The chart whose corners are set; whether it has yet to be said that they are right. */
  | { readonly kind: 'chart'; readonly chart: FoundChart; readonly isOpen: boolean }
  /** Several, and the corners are those of none. */
  | { readonly kind: 'which' }
  /** The corners are a person's own. */
  | { readonly kind: 'nothing' };

interface Standing {
  readonly charts: readonly FoundChart[];
  /** The number of the one whose corners are set, or null. */
  readonly chosen: number | null;
  readonly isFinding: boolean;
  readonly isConfirmed: boolean;
  readonly notFound: Problem | null;
}

export function questionOf({ charts, chosen, isFinding, isConfirmed, notFound }: Standing): Question {
  if (isFinding) return { kind: 'wait' };
  if (notFound) return { kind: 'none', problem: notFound };
  const chart = chosen === null ? undefined : charts[chosen];
  if (chart) return { kind: 'chart', chart, isOpen: !isConfirmed };
  return charts.length > 1 ? { kind: 'which' } : { kind: 'nothing' };
}
