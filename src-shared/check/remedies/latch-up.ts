/** Floats latched up, in columns. */
import type { KnitPattern } from '../../project/piece-in.ts';
import type { RemedyKind } from './kind.ts';
import { patternsWithout, wishFor } from './wished.ts';

export interface LatchUp {
  readonly code: 'latch-up';
  /** Which of the piece's patterns, from 0. */
  readonly patterns: readonly number[];
}

const isWished = (pattern: KnitPattern): boolean => pattern.longFloats === 'latched-up';

export const latchUp: RemedyKind<LatchUp> = {
  keepsPlaces: true,
  propose: ({ piece, plan, gathered }) => {
    if (gathered.finding.code === 'long-carry') return [];
    const patterns = patternsWithout(piece, plan, gathered, isWished);
    return patterns.length > 0 ? [{ code: 'latch-up', patterns }] : [];
  },
  setting: (piece, intent) => {
    const patterns = wishFor(piece, intent.patterns, isWished, { longFloats: 'latched-up' });
    return patterns.length > 0 ? { change: 'long-floats', patterns } : null;
  },
};
