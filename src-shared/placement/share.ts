/** How a rule shares what is left of a row among its spaces: what a margin and a gap would be if needles could be split. */
import { frameOf } from './frame.ts';
import { demandOf } from './rules/index.ts';
import type { PlacementQuestion } from './types.ts';

/** What a space is worked out of, from the stitches that are left for all of them. */
export type Share =
  /** It is asked for. */
  | { readonly by: 'given'; readonly stitches: number }
  /** What is left, divided. */
  | { readonly by: 'parts'; readonly parts: number; readonly exact: number }
  /** What is left, less `times` spaces that are given, divided. */
  | {
      readonly by: 'rest';
      readonly given: number;
      readonly times: number;
      readonly parts: number;
      readonly exact: number;
    }
  /** Needles are given, and it is what lies between. */
  | { readonly by: 'hand' };

export interface Shares {
  /** Of each margin, net of the seam. */
  readonly margin: Share;
  /** Of each gap; null for one group. */
  readonly gap: Share | null;
}

/** The shares of a question whose spaces come to `left` stitches, the margins net of the seam. */
export function sharesOf(question: PlacementQuestion, left: number): Shares {
  const gaps = question.groups.length - 1;
  const demand = demandOf(question.rule);
  const { margin, gap } = demand;
  const rest = (given: number, times: number, parts: number): Share => {
    return { by: 'rest', given, times, parts, exact: (left - times * given) / parts };
  };
  // What becomes of a single stitch: its share is one part of those that are shared.
  const one = demand.ideal({ ...frameOf(question), total: 1 });
  if (one === null) return { margin: { by: 'hand' }, gap: gaps > 0 ? { by: 'hand' } : null };
  if (margin !== null) {
    return { margin: { by: 'given', stitches: margin }, gap: gaps > 0 ? rest(margin, 2, gaps) : null };
  }
  if (gap !== null && gaps > 0) return { margin: rest(gap, gaps, 2), gap: { by: 'given', stitches: gap } };
  const parts = (share: number): Share => {
    return { by: 'parts', parts: Number((1 / share).toFixed(6)), exact: left * share };
  };
  return { margin: parts(one.margin), gap: one.gap === null ? null : parts(one.gap) };
}
