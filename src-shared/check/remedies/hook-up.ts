/** Floats hooked up, row by row. */
import type { KnitPattern } from '../../project/piece-in.ts';
import type { RemedyKind } from './kind.ts';
import { patternsWithout, wishFor } from './wished.ts';

export interface HookUp {
  readonly code: 'hook-up';
  /** Which of the piece's patterns, from 0. */
  readonly patterns: readonly number[];
}

const isWished = (pattern: KnitPattern): boolean => pattern.longFloats === 'hooked-up';

export const hookUp: RemedyKind<HookUp> = {
  keepsPlaces: true,
  propose: ({ piece, plan, gathered }) => {
    if (gathered.finding.code === 'long-carry') return [];
    const patterns = patternsWithout(piece, plan, gathered, isWished);
    return patterns.length > 0 ? [{ code: 'hook-up', patterns }] : [];
  },
  setting: (piece, intent) => {
    const patterns = wishFor(piece, intent.patterns, isWished, { longFloats: 'hooked-up' });
    return patterns.length > 0 ? { change: 'long-floats', patterns } : null;
  },
};
