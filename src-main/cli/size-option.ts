/** `--size`: the project as it is when the size of that name is at hand. */
import { problemError } from '@shared/problem/index.ts';
import { projectInSize, sizesOf, type Project } from '@shared/project/index.ts';
import type { Given } from './given.ts';
import type { NamedMotif } from './motif-argument.ts';
import { value } from './values.ts';

/** The size that is at hand if none is asked for. Throws `size-unknown` with those there are. */
export function inGivenSize(project: Project, given: Given): Project {
  return value(given, 'size', (name) => projectInSize(project, sizeCalled(project, name))) ?? project;
}

/** The same for what a MOTIF names; a picture has no sizes. Throws `option-unknown`. */
export function namedInGivenSize(named: NamedMotif, given: Given): NamedMotif {
  if (given.values.has('size') && !named.isProject) {
    throw problemError('option-unknown', { option: '--size' }, '--size with a picture');
  }
  return { ...named, project: inGivenSize(named.project, given) };
}

/** By its name as it stands; where none has it, by its letters, large or small. */
function sizeCalled(project: Project, given: string): number {
  const known = sizesOf(project).map(({ name }) => name);
  const exact = known.indexOf(given.trim());
  if (exact >= 0) return exact;
  const alike = known.filter((name) => name.toLowerCase() === given.trim().toLowerCase());
  if (alike.length !== 1) throw problemError('size-unknown', { given, known });
  return known.indexOf(alike[0] ?? '');
}
