import { findingsOf, remediesInSteps } from '@shared/check/index.ts';
import { planFor, runningOrderOf, type Plan } from '@shared/plan/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';
import type { FoundAhead, Job } from './table.ts';

export const lookaheadJob: Job<'lookahead'> = (piece) =>
  function* (ask, tell) {
    const plan = planFor(piece);
    yield null;
    if (!plan.ok) return [];
    if (ask === 'all') {
      tell(foundAhead(piece, plan.value));
      yield null;
    }
    return yield* remediesInSteps(piece, plan.value);
  };

/** Running order and findings take as long as a plan. `plan` is that of `piece`. */
export function foundAhead(piece: KnitPiece, plan: Plan): FoundAhead {
  const running = runningOrderOf(piece, plan);
  return { order: running.isKnittable ? running.order : [], findings: findingsOf(piece, plan) };
}
