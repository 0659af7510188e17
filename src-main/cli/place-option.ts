/** `--piece`, `--size` and `--colourway`, `--all-pieces` and `--all-sizes`: the project as it is looked at there, and how much of it is meant. */
import { problemError } from '@shared/problem/index.ts';
import {
  colourwayNamed,
  inColourway,
  projectAt,
  type Place,
  type Project,
  type ProjectAt,
  type Scope,
} from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Args } from './args.ts';
import type { NamedAt, NamedMotif } from './motif-argument.ts';
import { value } from './values.ts';

/**
 * The first piece and the first size if none is asked for, in the colourway
 * that is knitted. Throws `piece-unknown`, `size-unknown` or
 * `colourway-unknown` with those there are, and `piece-name-shared`.
 */
export function atGivenPlace(project: Project, args: Args): ProjectAt {
  const { pieces, sizes } = project;
  const piece = value(args, 'piece', (name) => idCalled(pieces, name, 'piece-unknown'));
  const size = value(args, 'size', (name) => idCalled(sizes, name, 'size-unknown'));
  const at: Partial<Place> = { ...(piece !== undefined && { piece }), ...(size !== undefined && { size }) };
  const colourway = value(args, 'colourway', (name) => colourwayNamed(project, name).id);
  return projectAt(colourway === undefined ? project : inColourway(project, colourway), at);
}

/** What is meant of the project. Throws `options-exclude` where one piece or size is named beside all. */
export function scopeGiven(args: Args): Scope {
  const of = (one: 'piece' | 'size', all: 'all-pieces' | 'all-sizes'): 'this' | 'all' => {
    if (!args.switches.has(all)) return 'this';
    if (args.values.has(one)) throw problemError('options-exclude', { options: [`--${one}`, `--${all}`] }, `--${all}`);
    return 'all';
  };
  return { pieces: of('piece', 'all-pieces'), sizes: of('size', 'all-sizes') };
}

/** The same for what a MOTIF names; a picture has no pieces and sizes. Throws `option-unknown`. */
export function namedAtGivenPlace(named: NamedMotif, args: Args): NamedAt {
  const given =
    (['piece', 'size', 'colourway'] as const).find((option) => args.values.has(option)) ??
    (['all-pieces'] as const).find((option) => args.switches.has(option));
  if (given && !named.isProject) {
    throw problemError('option-unknown', { option: `--${given}` }, `--${given} with a picture`);
  }
  return { ...named, project: atGivenPlace(named.project, args) };
}

/**
 * By its name as it stands; where none has it, by its letters, large or small,
 * or as one of several of a name by their order: `front (2)`. Throws `unknown`,
 * or `piece-name-shared`: sizes all have names of their own.
 */
function idCalled(
  things: readonly { readonly id: string; readonly name: string }[],
  given: string,
  unknown: 'piece-unknown' | 'size-unknown',
): string {
  const wanted = given.trim();
  const exact = things.filter(({ name }) => name.trim() === wanted);
  if (exact.length > 1) {
    const places = exact.map((thing) => things.indexOf(thing) + 1);
    throw problemError('piece-name-shared', { name: wanted, places });
  }
  const alike = things.filter(({ name }) => name.trim().toLowerCase() === wanted.toLowerCase());
  const numbered = things.filter((thing) => {
    const same = things.filter(({ name }) => name.trim() === thing.name.trim());
    return same.length > 1 && words.pieces.numbered(thing.name.trim(), same.indexOf(thing) + 1) === wanted;
  });
  const [only, another] = [exact, alike, numbered].find((found) => found.length > 0) ?? [];
  if (!only || another) throw problemError(unknown, { given, known: things.map(({ name }) => name) });
  return only.id;
}
