/** A ball of contrast for each group, so that nothing runs from one to the next. */
import { bandsOf } from '../../pattern/index.ts';
import type { RemedyKind } from './kind.ts';
import { bandsAt } from './where.ts';
import { indexOfBand } from '../setting.ts';

export interface OwnBalls {
  readonly code: 'own-balls';
  /** From 0. */
  readonly bands: readonly number[];
}

export const ownBalls: RemedyKind<OwnBalls> = {
  keepsPlaces: true,
  propose: ({ piece, plan, gathered }) => {
    if (!gathered.all.some((finding) => finding.code === 'long-floats' && finding.isBetweenGroups)) return [];
    const bands = bandsAt(plan, gathered).filter((band) => isOpen(bandsOf(piece)[band]));
    return bands.length > 0 ? [{ code: 'own-balls', bands }] : [];
  },
  setting: (piece, { bands }) => {
    const patterns = bands
      .filter((band) => isOpen(bandsOf(piece)[band]))
      .map((band) => ({
        index: indexOfBand(piece.patterns, band) as number,
        groups: () => ({ hasOwnBall: true }),
      }));
    return patterns.length > 0 ? { change: 'own-balls', patterns } : null;
  },
};

/** Whether some group of a band has no ball of its own. */
function isOpen(band: { readonly groups: readonly { readonly hasOwnBall: boolean }[] } | undefined): boolean {
  return band?.groups.some(({ hasOwnBall }) => !hasOwnBall) ?? false;
}
