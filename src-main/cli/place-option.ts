/** `--piece` and `--size`: the project as it is looked at there. */
import { problemError } from '@shared/problem/index.ts';
import { projectAt, type Place, type Project, type ProjectAt } from '@shared/project/index.ts';
import type { Args } from './args.ts';
import type { NamedAt, NamedMotif } from './motif-argument.ts';
import { value } from './values.ts';

/** The first piece and the first size if none is asked for. Throws `piece-unknown` or `size-unknown` with those there are. */
export function atGivenPlace(project: Project, args: Args): ProjectAt {
  const { pieces, sizes } = project;
  const piece = value(args, 'piece', (name) => idCalled(pieces, name, 'piece-unknown'));
  const size = value(args, 'size', (name) => idCalled(sizes, name, 'size-unknown'));
  const at: Partial<Place> = { ...(piece !== undefined && { piece }), ...(size !== undefined && { size }) };
  return projectAt(project, at);
}

/** The same for what a MOTIF names; a picture has no pieces and sizes. Throws `option-unknown`. */
export function namedAtGivenPlace(named: NamedMotif, args: Args): NamedAt {
  const given = (['piece', 'size'] as const).find((option) => args.values.has(option));
  if (given && !named.isProject) {
    throw problemError('option-unknown', { option: `--${given}` }, `--${given} with a picture`);
  }
  return { ...named, project: atGivenPlace(named.project, args) };
}

/** By its name as it stands; where none has it, by its letters, large or small. */
function idCalled(
  things: readonly { readonly id: string; readonly name: string }[],
  given: string,
  unknown: 'piece-unknown' | 'size-unknown',
): string {
  const exact = things.find(({ name }) => name === given.trim());
  if (exact) return exact.id;
  const alike = things.filter(({ name }) => name.toLowerCase() === given.trim().toLowerCase());
  const [only] = alike;
  if (!only || alike.length > 1) throw problemError(unknown, { given, known: things.map(({ name }) => name) });
  return only.id;
}
