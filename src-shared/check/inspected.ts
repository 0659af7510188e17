/** What findings are made from. */
import type { Plan } from '../plan/index.ts';
import { mainYarn, type Project } from '../project/project.ts';

/** A project and its plan. */
export interface Inspected extends Plan {
  readonly project: Project;
  /** Palette index of the main yarn. */
  readonly main: number;
}

/** `plan` is that of `project`. */
export function inspected(project: Project, plan: Plan): Inspected {
  return { ...plan, project, main: mainYarn(project) };
}
