import { remediesFor, type Remedy } from '@shared/check/index.ts';
import { planFor } from '@shared/plan/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';

/** All remedies of a piece at once, the most effective first; none of one that cannot be planned. */
export function* remediesOf(piece: KnitPiece): Generator<readonly Remedy[]> {
  const plan = planFor(piece);
  yield plan.ok ? remediesFor(piece, plan.value) : [];
}
