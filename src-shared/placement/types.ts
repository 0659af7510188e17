/**
 * The words of placing.
 *
 * Spaces are margin, gap, …, gap, margin, left to right on the needles.
 * `blocks` counts to the pattern blocks, `figure` to what the eye sees (blank
 * columns of a block count as space). Both count all stitches; `acrossSeam` is
 * the sum of the judged margins less the seam allowances, the gap that is seen
 * when the piece is sewn up.
 */
import type { Run, Slot } from '../bed/index.ts';
import type { PlacementRule } from '../pattern/index.ts';

/** A group as it lies on the needles. */
export interface GroupOnNeedles {
  /** Needles the pattern block takes. */
  readonly width: number;
  /** Ground columns at its left and right edge, as placed on the needles; they sum to less than `width`. */
  readonly blankLeft: number;
  readonly blankRight: number;
}

export interface PlacementQuestion {
  /** The needles of the row the groups stand on. */
  readonly edges: Run;
  /** Left to right. */
  readonly groups: readonly GroupOnNeedles[];
  readonly seamAllowance: { readonly left: number; readonly right: number };
  readonly rule: PlacementRule;
  readonly judge: 'figure' | 'blocks';
}

export interface Spaces {
  readonly margins: readonly [left: number, right: number];
  /** Between neighbouring groups, left to right; empty for one group. */
  readonly gaps: readonly number[];
}

/** One group's needles: its block and what the eye sees of it. */
export interface GroupPlace {
  readonly block: Run;
  readonly figure: Run;
}

/** Why a choice stands where it does; `words/` makes the sentence. */
export interface Reason {
  readonly rule: PlacementRule['kind'];
  readonly judge: 'figure' | 'blocks';
  /** Rank among the choices, 0 = best. */
  readonly rank: number;
  readonly imbalance: number;
  readonly fromRule: number;
  /**
   * What the rule asks for, if needles could be split: each margin (net of the
   * allowance) and each gap (null for one group). Null by hand.
   */
  readonly ideal: { readonly margin: number; readonly gap: number | null } | null;
  /** Stitches of each margin that the seam takes. */
  readonly seamAllowance: { readonly left: number; readonly right: number };
  /** By what this choice loses against the best, or null for that. */
  readonly behindBy: 'imbalance' | 'from-rule' | 'gap-spread' | 'narrower-margins' | 'further-right' | null;
}

export interface PlacementChoice {
  readonly groups: readonly GroupPlace[];
  readonly blocks: Spaces;
  readonly figure: Spaces;
  readonly acrossSeam: number;
  readonly imbalance: number;
  readonly fromRule: number;
  readonly reason: Reason;
}

/** First needles, in the order of the groups. */
export type FirstNeedles = readonly Slot[];
