/** The plan of a project, worked out once. */
import { outcome, type Outcome } from '../problem/index.ts';
import type { Project } from '../project/project.ts';
import { makePlan } from './plan.ts';
import type { Plan } from './types.ts';

const known = new WeakMap<Project, Outcome<Plan>>();

/** The plan, or what stands in its way. The same project value gives the same plan value. */
export function planFor(project: Project): Outcome<Plan> {
  let plan = known.get(project);
  if (!plan) {
    plan = outcome(() => makePlan(project));
    known.set(project, plan);
  }
  return plan;
}
