/** The running order of a piece, worked out once for each plan. */
import type { KnitPiece } from '../../project/index.ts';
import type { Plan } from '../types.ts';
import type { Obstacle } from './obstacles.ts';
import { gatherObstacles, makeOrder } from './order.ts';
import type { RunningOrder } from './types.ts';
import { Work } from './work.ts';

export type * from './types.ts';
export type * from './obstacles.ts';
export * from './needle-acts.ts';
export { joinOf, type Join } from './join.ts';

export type RunningOrderOutcome =
  | { readonly isKnittable: true; readonly order: RunningOrder }
  /** All that stands in its way; never empty. */
  | { readonly isKnittable: false; readonly obstacles: readonly Obstacle[] };

interface Known {
  readonly work: Work;
  readonly obstacles: readonly Obstacle[];
  outcome: RunningOrderOutcome | null;
}

const known = new WeakMap<Plan, Known>();

/**
 * What a knitter does from casting on to casting off, or all that stands in
 * the way. `plan` is that of `piece`; the same plan value gives the same order value.
 */
export function runningOrderOf(piece: KnitPiece, plan: Plan): RunningOrderOutcome {
  const of = knownOf(piece, plan);
  const { obstacles, work } = of;
  return (of.outcome ??=
    obstacles.length > 0 ? { isKnittable: false, obstacles } : { isKnittable: true, order: makeOrder(work) });
}

/** What hands cannot do; empty where there is a running order. `plan` is that of `piece`. */
export function obstaclesOf(piece: KnitPiece, plan: Plan): readonly Obstacle[] {
  return knownOf(piece, plan).obstacles;
}

function knownOf(piece: KnitPiece, plan: Plan): Known {
  let of = known.get(plan);
  if (!of) {
    const work = new Work(piece, plan);
    of = { work, obstacles: gatherObstacles(work), outcome: null };
    known.set(plan, of);
  }
  return of;
}
