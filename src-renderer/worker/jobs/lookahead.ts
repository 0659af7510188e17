import { findingsOf, gathered, Remedies, remediesAt } from '@shared/check/index.ts';
import { atHand } from '@shared/output/steps/at-hand.ts';
import { landmarksOf } from '@shared/output/steps/landmarks.ts';
import { planFor, runningOrderOf, type Plan } from '@shared/plan/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';
import type { FoundAhead, Job } from './table.ts';

/** The plan that was made last: after a cell is painted most of the next is in it. */
let last: Plan | null = null;

/** Planned once, however often it is asked of the same piece. */
export const lookaheadJob: Job<'lookahead'> = (piece) => {
  let plan: Plan | null = null;
  let before: Plan | null = null;
  let found: FoundAhead | null = null;
  return function* (ask, tell) {
    if (!plan) {
      before = last;
      const planned = planFor(piece, before);
      yield null;
      if (!planned.ok) return null;
      plan = last = planned.value;
    }
    found ??= yield* foundInSteps(piece, plan, before);
    if (ask === 'all') {
      tell(found);
      return null;
    }
    const finding = found.findings.find(({ kind }) => kind === ask.remediesFor);
    if (finding) tell({ kind: finding.kind, remedies: yield* remediesAt(new Remedies(piece, plan), finding) });
    return null;
  };
};

/**
 * Running order and findings take as long as a plan. `plan` is that of `piece`.
 * What the panel tells of them is picked out here, so that the window has only
 * to show it.
 */
export function foundAhead(piece: KnitPiece, plan: Plan): FoundAhead {
  const steps = foundInSteps(piece, plan);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same, a step at a time. `before`: a plan of the piece before its last change, of which most is in this one. */
export function* foundInSteps(
  piece: KnitPiece,
  plan: Plan,
  before: Plan | null = null,
): Generator<null, FoundAhead, void> {
  const running = runningOrderOf(piece, plan);
  yield null;
  const findings = gathered(findingsOf(piece, plan, before), plan.patterns);
  yield null;
  const order = running.isKnittable ? running.order : [];
  return { order, findings, atHand: atHand(plan, order), landmarks: landmarksOf(order) };
}
