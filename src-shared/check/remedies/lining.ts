/** A lining over the purl side of the whole piece: what floats there is out of the way of fingers. */
import type { RemedyKind } from './kind.ts';
import { linedPlan } from './lined-plan.ts';

export interface Lining {
  readonly code: 'lining';
}

export const lining: RemedyKind<Lining> = {
  keepsPlaces: true,
  propose: ({ piece }) => (piece.isLined ? [] : [{ code: 'lining' }]),
  setting: (piece) => (piece.isLined ? null : { change: 'piece-details', piece: { isLined: true } }),
  planAfter: linedPlan,
};
