/** What a placing rule is to the solver. */
import type { Frame } from '../frame.ts';
import type { Reason } from '../types.ts';

/** The smallest and the largest of the gaps. */
export interface GapRange {
  readonly least: number;
  readonly most: number;
}

/** What a rule asks of the judged spaces. */
export interface Demand {
  /** What each margin, net of the seam allowance, must be; null: whatever comes out. */
  readonly margin: number | null;
  /** What each gap must be; null: whatever comes out. */
  readonly gap: number | null;
  /**
   * How far spaces are from what the rule asks, in stitches, 0 or more. It
   * knows the margins (net) and the extremes of the gaps only, `null` for one
   * group, and must never shrink when the range of the gaps widens: the
   * solver's search rests on that.
   */
  distance(left: number, right: number, gaps: GapRange | null): number;
  /** What it would ask for if needles could be split. */
  ideal(frame: Frame): Reason['ideal'];
}

/** Gaps between the groups of a frame. */
export function gapCount(frame: Frame): number {
  return frame.least.length - 2;
}
