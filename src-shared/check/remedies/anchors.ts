/** Anchors: stitches of the float's own yarn that break it, wished for by the pattern. */
import { longestBetween } from '../../strands/index.ts';
import type { RemedyKind } from './kind.ts';

export interface Anchors {
  readonly code: 'anchors';
  /** Which of the piece's patterns, from 0. */
  readonly pattern: number;
  /** No float of it is to be over so many stitches. */
  readonly longest: number;
}

export const anchors: RemedyKind<Anchors> = {
  keepsPlaces: true,
  changesCells: true,
  propose: ({ piece, plan, gathered }) => {
    const { finding, all } = gathered;
    // Anchors of main would speckle the figure: a person asks for them.
    if ('role' in finding && finding.role === 'main') return [];
    return plan.patterns.flatMap(({ firstRow, lastRow }, pattern): Anchors[] => {
      if (!all.some(({ rows }) => rows[0] <= lastRow && firstRow <= rows[1])) return [];
      const longest = longestBetween(piece.floatLimit, plan.gauges, firstRow, lastRow);
      const wished = piece.patterns[pattern]?.anchors?.longest ?? Infinity;
      return longest >= 1 && longest < wished ? [{ code: 'anchors', pattern, longest }] : [];
    });
  },
  setting: ({ patterns }, { pattern: index, longest }) => {
    const pattern = patterns[index];
    if (!pattern || (pattern.anchors && pattern.anchors.longest <= longest)) return null;
    const others = pattern.anchors ?? { isBehindFigure: false, byHand: [] };
    return { change: 'anchors', patterns: [{ index, to: { anchors: { ...others, longest } } }] };
  },
};
