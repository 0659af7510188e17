/** What findings are made from. */
import type { Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';

/** A piece and its plan. */
export interface Inspected extends Plan {
  readonly piece: KnitPiece;
  readonly plan: Plan;
}

/** `plan` is that of `piece`. */
export function inspected(piece: KnitPiece, plan: Plan): Inspected {
  return { ...plan, piece, plan };
}
