/** A project as it is sent to the worker. */
import { projectAt, type Place, type Project, type ProjectAt } from '@shared/project/index.ts';

export interface SentProject {
  /** Without pictures to trace, which may be large and are on no sheet. */
  readonly whole: Project;
  /** The piece, and its size. */
  readonly at: Place;
}

const sent = new WeakMap<ProjectAt, SentProject>();

/** The same object for the same project, so that it is sent once. */
export function sentProject(project: ProjectAt): SentProject {
  const known = sent.get(project);
  if (known) return known;
  const { whole, at } = project;
  const made = { whole: { ...whole, motifs: whole.motifs.map((motif) => ({ ...motif, underlay: null })) }, at };
  sent.set(project, made);
  return made;
}

/** The project again, on the other side. */
export const projectSent = ({ whole, at }: SentProject): ProjectAt => projectAt(whole, at);
