/** What a placing rule is to the solver, and to whoever offers it. */
import type { SolvedRule } from '../../pattern/index.ts';
import type { Frame } from '../frame.ts';
import type { Reason, Spaces } from '../types.ts';

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

/** A rule from which needles are solved, by its kind. */
export interface SolvingRule<Kind extends SolvedRule['kind']> {
  /** The rule as it begins for groups that stand with these spaces, the margins net of the seam; null where none stand yet. */
  startFrom(spaces: Spaces | null): Extract<SolvedRule, { kind: Kind }>;
  demandOf(rule: Extract<SolvedRule, { kind: Kind }>): Demand;
}

/** Gaps between the groups of a frame. */
export function gapCount(frame: Frame): number {
  return frame.least.length - 2;
}
