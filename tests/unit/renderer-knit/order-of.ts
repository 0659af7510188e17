/** The order by which a project is knitted as it is designed. */
import { knittingOrderOf, type KnittingOrder } from '@shared/knitting/index.ts';
import { runningOrderOf } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { checkedPlan } from '../check/found.ts';

export function orderOf(project: ProjectAt): KnittingOrder {
  const plan = checkedPlan(project);
  const running = runningOrderOf(pieceIn(project), plan);
  if (!running.isKnittable) throw new Error('It cannot be knitted');
  return knittingOrderOf(pieceIn(project), plan, running.order);
}
