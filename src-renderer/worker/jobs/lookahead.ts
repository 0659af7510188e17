import { findingsOf, gathered, isMendable, Remedies, remediesAt } from '@shared/check/index.ts';
import { atHand } from '@shared/output/steps/at-hand.ts';
import { landmarksOf } from '@shared/output/steps/landmarks.ts';
import { planFor, runningOrderOf, type Plan } from '@shared/plan/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';
import type { FoundAhead, Job } from './table.ts';

/** Of more than so many findings nobody reads what would help with the last. */
const MOST_MENDED = 24;

export const lookaheadJob: Job<'lookahead'> = (piece) =>
  function* (ask, tell) {
    const plan = planFor(piece);
    yield null;
    if (!plan.ok) return null;
    const found = foundAhead(piece, plan.value);
    if (ask === 'all') {
      tell(found);
      yield null;
    }
    const remedies = new Remedies(piece, plan.value);
    for (const finding of found.findings.filter(isMendable).slice(0, MOST_MENDED)) {
      tell({ kind: finding.kind, remedies: yield* remediesAt(remedies, finding) });
      yield null;
    }
    return null;
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
    findings: gathered(findingsOf(piece, plan), plan.patterns),
    atHand: atHand(plan, order),
    landmarks: landmarksOf(order),
  };
}
