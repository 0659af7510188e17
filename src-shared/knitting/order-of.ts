/** What a knitter follows, from the plan of a piece. */
import { copiesIn } from '../pattern/index.ts';
import type { Plan, RunningOrder } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import type { KnittingOrder } from './model.ts';

/**
 * The running order `order` with the facts of its rows. `plan` is that of
 * `piece`, and `order` that of `plan`; the same order value gives the same value.
 */
export function knittingOrderOf(piece: KnitPiece, plan: Plan, order: RunningOrder): KnittingOrder {
  const made = known.get(order) ?? makeOrder(piece, plan, order);
  known.set(order, made);
  return made;
}

const known = new WeakMap<RunningOrder, KnittingOrder>();

function makeOrder(piece: KnitPiece, plan: Plan, order: RunningOrder): KnittingOrder {
  const motifs = new Map(copiesIn(piece).map(({ motif }) => [motif.id, motif.name]));
  return {
    order,
    contrast: plan.rows.map(({ contrast }) => contrast.map(({ first, last, yarn }) => ({ first, last, yarn }))),
    groups: plan.groups.map(({ band, motif, block, across, firstRow, lastRow }) => ({
      pattern: { kind: 'band', number: band },
      motif,
      needles: { first: block.first, last: block.last },
      copies: across,
      firstRow,
      lastRow,
    })),
    yarns: piece.yarns.map(({ name, colour }) => ({ name, colour })),
    mainYarn: piece.mainYarn,
    motifs: [...motifs].map(([id, name]) => ({ id, name })),
    chooses: piece.machine.chooses,
  };
}
