/** Anchors: stitches of the float's own yarn that break it, wished for by the pattern. */
import { longestBetween } from '../../strands/index.ts';
import type { KnitPattern } from '../../project/piece-in.ts';
import type { RemedyKind } from './kind.ts';

export interface Anchors {
  readonly code: 'anchors';
  /** Which of the piece's patterns, from 0. */
  readonly patterns: readonly number[];
  /** No float of theirs is to be over so many stitches. */
  readonly longest: number;
}

export const anchors: RemedyKind<Anchors> = {
  keepsPlaces: true,
  changesCells: true,
  propose: ({ piece, plan, gathered }) => {
    const { finding, all } = gathered;
    // Anchors of main would speckle the figure: a person asks for them.
    if ('role' in finding && finding.role === 'main') return [];
    const byLongest = new Map<number, number[]>();
    for (const [pattern, { firstRow, lastRow }] of plan.patterns.entries()) {
      if (!all.some(({ rows }) => rows[0] <= lastRow && firstRow <= rows[1])) continue;
      const longest = longestBetween(piece.floatLimit, plan.gauges, firstRow, lastRow);
      if (longest >= 1 && longest < wishedOf(piece.patterns[pattern])) {
        byLongest.set(longest, [...(byLongest.get(longest) ?? []), pattern]);
      }
    }
    return [...byLongest].map(([longest, patterns]) => ({ code: 'anchors', patterns, longest }));
  },
  setting: ({ patterns: all }, { patterns, longest }) => {
    const patches = patterns.flatMap((index) => {
      const pattern = all[index];
      if (!pattern || wishedOf(pattern) <= longest) return [];
      const others = pattern.anchors ?? { isBehindFigure: false, byHand: [] };
      return [{ index, to: { anchors: { ...others, longest } } }];
    });
    return patches.length > 0 ? { change: 'anchors', patterns: patches } : null;
  },
};

/** The longest float that a pattern wishes for, in stitches. */
function wishedOf(pattern: KnitPattern | undefined): number {
  return pattern?.anchors?.longest ?? Infinity;
}
