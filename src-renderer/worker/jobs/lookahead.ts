import { findingsOf, gathered, remediesInSteps } from '@shared/check/index.ts';
import { atHand } from '@shared/output/steps/at-hand.ts';
import { landmarksOf } from '@shared/output/steps/landmarks.ts';
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
    return yield* remediesInSteps(piece, plan.value, findingsOf(piece, plan.value));
  };

/**
 * Running order and findings take as long as a plan. `plan` is that of `piece`.
 * What the panel tells of them is picked out here, so that the window has only
 * to show it.
 */
export function foundAhead(piece: KnitPiece, plan: Plan): FoundAhead {
  const running = runningOrderOf(piece, plan);
  const order = running.isKnittable ? running.order : [];
  return {
    order,
    findings: gathered(findingsOf(piece, plan)),
    atHand: atHand(plan, order),
    landmarks: landmarksOf(order),
  };
}
