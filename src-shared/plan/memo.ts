/** The plan of a piece, worked out once. */
import { outcome, type Outcome } from '../problem/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { makePlan } from './plan.ts';
import type { Plan } from './types.ts';

const known = new WeakMap<KnitPiece, Outcome<Plan>>();

/**
 * The plan, or what stands in its way. The same piece value gives the same plan
 * value. `before`: as `makePlan` takes it.
 */
export function planFor(piece: KnitPiece, before: Plan | null = null): Outcome<Plan> {
  let plan = known.get(piece);
  if (!plan) {
    plan = outcome(() => makePlan(piece, undefined, before));
    known.set(piece, plan);
  }
  return plan;
}
