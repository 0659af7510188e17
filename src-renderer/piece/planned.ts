/**
 * The plan that is drawn, whatever stands in the way.
 *
 * While a form holds something that cannot be knitted, the plain piece stays
 * on the stage and the problem is said beside it.
 */
import { makePlan, planFor, type Plan } from '@shared/plan/index.ts';
import { outcome, type Problem } from '@shared/problem/index.ts';
import type { Project } from '@shared/project/index.ts';

export interface Planned {
  readonly plan: Plan;
  /** Why nothing is placed; null for the whole plan. */
  readonly problem: Problem | null;
}

const kept = new WeakMap<Project, Planned>();

/** The plan of a project, or of its plain piece with the problem. */
export function plannedOf(project: Project): Planned {
  let planned = kept.get(project);
  if (!planned) kept.set(project, (planned = plan(project)));
  return planned;
}

function plan(project: Project): Planned {
  const whole = planFor(project);
  if (whole.ok) return { plan: whole.value, problem: null };
  for (const plain of plainer(project)) {
    const planned = outcome(() => makePlan(plain));
    if (planned.ok) return { plan: planned.value, problem: whole.problem };
  }
  throw new Error('A straight piece without groups and fills can always be planned');
}

/** The project with less and less of what can be wrong. */
function* plainer(project: Project): Generator<Project> {
  const { piece } = project;
  yield { ...project, bands: [] };
  yield { ...project, fills: [] };
  yield { ...project, bands: [], fills: [] };
  const free = { ...piece, hemRows: 0, parts: [] };
  yield { ...project, bands: [], fills: [], piece: free };
  const { stitches, rows } = piece.shape;
  yield { ...project, bands: [], fills: [], piece: { ...free, shape: { kind: 'rectangle', stitches, rows } } };
}
