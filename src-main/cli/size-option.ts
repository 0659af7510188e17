/** `--size`: the project as it is when the size of that name is the current one. */
import { problemError } from '@shared/problem/index.ts';
import { projectInSize, sizesOf, type Project } from '@shared/project/index.ts';
import type { Args } from './args.ts';
import type { NamedMotif } from './motif-argument.ts';
import { value } from './values.ts';

/** The current size if none is asked for. Throws `size-unknown` with those there are. */
export function inGivenSize(project: Project, args: Args): Project {
  return value(args, 'size', (name) => projectInSize(project, sizeCalled(project, name))) ?? project;
}

/** The same for what a MOTIF names; a picture has no sizes. Throws `option-unknown`. */
export function namedInGivenSize(named: NamedMotif, args: Args): NamedMotif {
  if (args.values.has('size') && !named.isProject) {
    throw problemError('option-unknown', { option: '--size' }, '--size with a picture');
  }
  return { ...named, project: inGivenSize(named.project, args) };
}

/** By its name as it stands; where none has it, by its letters, large or small. */
function sizeCalled(project: Project, name: string): number {
  const known = sizesOf(project).map((size) => size.name);
  const exact = known.indexOf(name.trim());
  if (exact >= 0) return exact;
  const alike = known.filter((other) => other.toLowerCase() === name.trim().toLowerCase());
  if (alike.length !== 1) throw problemError('size-unknown', { given: name, known });
  return known.indexOf(alike[0] ?? '');
}
