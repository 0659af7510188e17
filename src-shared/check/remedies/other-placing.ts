/** Another of the ranked choices for where the groups stand. */
import { bandsOf } from '../../pattern/index.ts';
import { indexOfBand } from '../setting.ts';
import type { RemedyKind } from './kind.ts';
import { bandsAt, isBesideGroups } from './where.ts';

export interface OtherPlacing {
  readonly code: 'other-placing';
  /** From 0. */
  readonly bands: readonly number[];
  /** Its rank, 0 being the best. */
  readonly choice: number;
}

export const otherPlacing: RemedyKind<OtherPlacing> = {
  keepsPlaces: false,
  propose: ({ piece, plan, gathered }) => {
    if (!isBesideGroups(plan, gathered)) return [];
    const bands = bandsAt(plan, gathered).filter((band) => bandsOf(piece)[band]?.rule.kind !== 'by-hand');
    const placed = bandsOf(plan)[bands[0] ?? -1];
    const ranks = placed ? [...placed.choices.keys()].filter((rank) => rank !== placed.taken) : [];
    return ranks.map((choice) => ({ code: 'other-placing', bands, choice }));
  },
  setting: (piece, { bands, choice }) => {
    const patterns = bands
      .filter((band) => {
        const there = bandsOf(piece)[band];
        return there && there.rule.kind !== 'by-hand' && there.choice !== choice;
      })
      .map((band) => ({ index: indexOfBand(piece.patterns, band) as number, to: { choice } }));
    return patterns.length > 0 ? { change: 'choose-placement', patterns } : null;
  },
};
