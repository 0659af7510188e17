/** A plan with more of it lined. */
import { sectionsOf } from '../../piece/index.ts';
import { makePlan, type Plan } from '../../plan/index.ts';
import type { KnitPiece } from '../../project/piece-in.ts';

/**
 * The plan of a piece that differs in what is lined. No yarn lies elsewhere; but
 * where floats are hooked or latched up, or yarn is cut, all is laid anew: under a
 * lining none of that is done, and a column that ends there may be too short to be
 * latched.
 */
export function linedPlan(then: KnitPiece, plan: Plan): Plan {
  const lined = { ...plan, sections: sectionsOf(then.shape.rows, then) };
  const isMended = plan.rows.some(({ floats, cuts }) => cuts.length > 0 || floats.some(({ held }) => held.length > 0));
  return isMended ? makePlan(then, lined) : lined;
}
