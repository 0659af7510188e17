/** The contrast of an all-over carried up at the edges of the piece, by end-needle selection. */
import type { KnitPattern } from '../../project/piece-in.ts';
import type { RemedyKind } from './kind.ts';
import { patternsWithout, wishFor } from './wished.ts';

export interface EndNeedlesOn {
  readonly code: 'end-needles-on';
  /** Which of the piece's patterns, from 0. */
  readonly patterns: readonly number[];
}

const isWished = (pattern: KnitPattern): boolean => pattern.kind !== 'all-over' || pattern.endNeedles;

export const endNeedlesOn: RemedyKind<EndNeedlesOn> = {
  keepsPlaces: true,
  propose: ({ piece, plan, gathered }) => {
    if (gathered.finding.code !== 'long-carry' || piece.machine.endNeedles !== 'switch') return [];
    const patterns = patternsWithout(piece, plan, gathered, isWished);
    return patterns.length > 0 ? [{ code: 'end-needles-on', patterns }] : [];
  },
  setting: (piece, intent) => {
    const patterns = wishFor(piece, intent.patterns, isWished, { endNeedles: true });
    return patterns.length > 0 ? { change: 'end-needles', patterns } : null;
  },
};
