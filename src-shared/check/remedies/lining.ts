/** A lining over the purl side of the whole piece: what floats there is out of the way of fingers. */
import { sectionsOf } from '../../piece/index.ts';
import type { RemedyKind } from './kind.ts';

export interface Lining {
  readonly code: 'lining';
}

export const lining: RemedyKind<Lining> = {
  keepsPlaces: true,
  propose: ({ piece }) => (piece.isLined ? [] : [{ code: 'lining' }]),
  setting: (piece) => (piece.isLined ? null : { change: 'piece-details', piece: { isLined: true } }),
  planAfter: (then, plan) => ({ ...plan, sections: sectionsOf(then.shape.rows, then) }),
};
