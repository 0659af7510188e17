/** Yarn cut and joined again, instead of carried too far aside. */
import type { KnitPattern } from '../../project/piece-in.ts';
import type { RemedyKind } from './kind.ts';
import { patternsWithout, wishFor } from './wished.ts';

export interface CutCarries {
  readonly code: 'cut-carries';
  /** Which of the piece's patterns, from 0. */
  readonly patterns: readonly number[];
}

const isWished = (pattern: KnitPattern): boolean => pattern.longCarries === 'cut';

export const cutCarries: RemedyKind<CutCarries> = {
  keepsPlaces: true,
  propose: ({ piece, plan, gathered }) => {
    if (gathered.finding.code !== 'long-carry') return [];
    const patterns = patternsWithout(piece, plan, gathered, isWished);
    return patterns.length > 0 ? [{ code: 'cut-carries', patterns }] : [];
  },
  setting: (piece, intent) => {
    const patterns = wishFor(piece, intent.patterns, isWished, { longCarries: 'cut' });
    return patterns.length > 0 ? { change: 'long-carries', patterns } : null;
  },
};
