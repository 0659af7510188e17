/** Groups in another order of mirroring, every second one mirrored, so that mirrored ones meet: what is blank in a motif lies elsewhere then. */
import { bandsOf } from '../../pattern/index.ts';
import { indexOfBand } from '../setting.ts';
import type { RemedyKind } from './kind.ts';
import { bandsAt, isBesideGroups } from './where.ts';

export interface MirroredOrder {
  readonly code: 'mirrored-order';
  /** From 0. */
  readonly bands: readonly number[];
  /** Whether the first group is mirrored, and every second one after it, or the others. */
  readonly isFirstMirrored: boolean;
}

export const mirroredOrder: RemedyKind<MirroredOrder> = {
  keepsPlaces: false,
  propose: ({ piece, plan, gathered }) => {
    if (!isBesideGroups(plan, gathered)) return [];
    const bands = bandsAt(plan, gathered).filter((band) => {
      const { groups = [] } = bandsOf(piece)[band] ?? {};
      // Letters are never mirrored.
      return groups.length > 1 && groups.every(({ motif }) => !motif.isLettering);
    });
    if (bands.length === 0) return [];
    return [false, true].map((isFirstMirrored) => ({ code: 'mirrored-order', bands, isFirstMirrored }));
  },
  setting: (piece, { bands, isFirstMirrored }) => {
    const isMirrored = (group: number): boolean => (group % 2 === 0) === isFirstMirrored;
    const patterns = bands
      .filter((band) => bandsOf(piece)[band]?.groups.some((group, at) => group.isMirrored !== isMirrored(at)))
      .map((band) => ({
        index: indexOfBand(piece.patterns, band) as number,
        groups: (group: number) => ({ isMirrored: isMirrored(group) }),
      }));
    return patterns.length > 0 ? { change: 'mirror-group', patterns } : null;
  },
};
