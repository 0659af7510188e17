/** What findings are made from. */
import type { PlacedPattern } from '../fabric/index.ts';
import type { Plan } from '../plan/index.ts';
import type { KnitPattern, KnitPiece } from '../project/index.ts';

/** A piece and its plan. */
export interface Inspected extends Plan {
  readonly piece: KnitPiece;
  readonly plan: Plan;
  /** Each pattern as it was asked for, and as it lies. */
  readonly laid: readonly { readonly asked: KnitPattern; readonly placed: PlacedPattern }[];
}

/** `plan` is that of `piece`. */
export function inspected(piece: KnitPiece, plan: Plan): Inspected {
  const laid = plan.patterns.map((placed, index) => ({ asked: piece.patterns[index] as KnitPattern, placed }));
  return { ...plan, piece, plan, laid };
}
