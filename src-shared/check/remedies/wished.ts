/** Remedies that are a wish of patterns: these are given it, and each plan works it out anew. */
import type { Plan } from '../../plan/index.ts';
import type { KnitPattern, KnitPiece } from '../../project/piece-in.ts';
import type { Found } from '../gather.ts';
import type { PatternFields } from '../setting.ts';

/** The patterns on whose rows the finding is and that do not wish for it yet, from 0. */
export function patternsWithout(
  piece: KnitPiece,
  plan: Plan,
  { all }: Found,
  isWished: (pattern: KnitPattern) => boolean,
): number[] {
  return plan.patterns.flatMap(({ firstRow, lastRow }, index) => {
    const pattern = piece.patterns[index];
    const isThere = all.some(({ rows }) => rows[0] <= lastRow && firstRow <= rows[1]);
    return pattern && isThere && !isWished(pattern) ? [index] : [];
  });
}

/** What those of the patterns are given that are there and do not wish for it yet. */
export function wishFor(
  { patterns }: KnitPiece,
  indices: readonly number[],
  isWished: (pattern: KnitPattern) => boolean,
  to: PatternFields,
): { readonly index: number; readonly to: PatternFields }[] {
  return indices.flatMap((index) => {
    const pattern = patterns[index];
    return pattern && !isWished(pattern) ? [{ index, to }] : [];
  });
}
