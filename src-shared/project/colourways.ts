/**
 * Colourways added, called otherwise, chosen and removed: each as one {@link Change}.
 *
 * Which colourway is knitted belongs to the project: sheet, exports and command
 * line are of it, and whoever opens the file knits the same. Looking at several
 * side by side changes nothing.
 */
import { problemError } from '../problem/index.ts';
import { changeOf, type Change } from './change.ts';
import { setProject } from './edit-makers.ts';
import { MOST_COLOURWAYS, type Colourway, type ColourwayId, type Project } from './model.ts';
import { MOST_YARN_LETTERS, type Yarn } from './yarn-model.ts';

type Yarned = Pick<Project, 'yarns' | 'colourways'>;

/** The colourway called `id`. Throws `RangeError` for one that is not there. */
export function colourwayOf({ colourways }: Pick<Project, 'colourways'>, id: ColourwayId): Colourway {
  const colourway = colourways.find((one) => one.id === id);
  if (!colourway) throw new RangeError(`There is no colourway "${id}"`);
  return colourway;
}

/** The one that is knitted. */
export function knittedColourway({ colourways }: Pick<Project, 'colourways'>): Colourway {
  return colourways.find(({ yarns }) => yarns === null) as Colourway;
}

/** The yarns of a colourway, by palette index. Throws what {@link colourwayOf} throws. */
export function yarnsOf(project: Yarned, id: ColourwayId): readonly Yarn[] {
  return colourwayOf(project, id).yarns ?? project.yarns;
}

/** The fields of a project once another of its colourways is the one that is knitted. */
function knittedIn(project: Yarned, id: ColourwayId): Yarned {
  return {
    yarns: yarnsOf(project, id),
    colourways: project.colourways.map((one) =>
      one.id === id ? { ...one, yarns: null } : one.yarns === null ? { ...one, yarns: project.yarns } : one,
    ),
  };
}

/** The project knitted in another of its colourways. Throws what {@link colourwayOf} throws. */
export function inColourway<P extends Yarned>(project: P, id: ColourwayId): P {
  return knittedColourway(project).id === id ? project : { ...project, ...knittedIn(project, id) };
}

/** Another colourway is the one that is knitted. Null if it is already. */
export function chooseColourway(project: Project, id: ColourwayId): Change | null {
  if (knittedColourway(project).id === id) return null;
  return changeOf('choose-colourway', setProject(knittedIn(project, id)));
}

/**
 * A colourway more, behind the one that it has the yarns of, under an `id` that
 * none had. Throws `colourways-too-many` and what {@link assertColourwayName} throws.
 */
export function addColourway(project: Project, like: ColourwayId, name: string, id: ColourwayId): Change {
  const { colourways } = project;
  if (colourways.length >= MOST_COLOURWAYS) throw problemError('colourways-too-many', { most: MOST_COLOURWAYS });
  assertColourwayName(project, name);
  const at = colourways.indexOf(colourwayOf(project, like)) + 1;
  const added = { id, name, yarns: yarnsOf(project, like) };
  return changeOf('add-colourway', setProject({ colourways: colourways.toSpliced(at, 0, added) }));
}

/** Throws what {@link assertColourwayName} throws. */
export function renameColourway(project: Project, id: ColourwayId, name: string): Change {
  assertColourwayName(project, name, id);
  const colourways = project.colourways.map((one) => (one.id === id ? { ...one, name } : one));
  return changeOf('rename-colourway', setProject({ colourways }));
}

/** Goes; where it was knitted, the one before it is now, or the next. Throws `colourway-last`. */
export function removeColourway(project: Project, id: ColourwayId): Change {
  const at = project.colourways.indexOf(colourwayOf(project, id));
  const next = project.colourways[at === 0 ? 1 : at - 1];
  if (!next) throw problemError('colourway-last', {});
  const { yarns, colourways } = colourwayOf(project, id).yarns === null ? knittedIn(project, next.id) : project;
  return changeOf(
    'remove-colourway',
    setProject({ ...(yarns !== project.yarns && { yarns }), colourways: colourways.filter((one) => one.id !== id) }),
  );
}

/** A yarn of one colourway gets another name, colour or count. */
export function changeYarnIn(project: Project, id: ColourwayId, index: number, to: Partial<Yarn>): Change {
  const yarns = yarnsOf(project, id).map((yarn, at) => (at === index ? { ...yarn, ...to } : yarn));
  if (colourwayOf(project, id).yarns === null) return changeOf('yarns', setProject({ yarns }));
  const colourways = project.colourways.map((one) => (one.id === id ? { ...one, yarns } : one));
  return changeOf('yarns', setProject({ colourways }));
}

/** Throws `colourway-name-unusable` for no name and one that is too long, `colourway-name-taken` for that of another than `own`. */
export function assertColourwayName(
  { colourways }: Pick<Project, 'colourways'>,
  name: string,
  own?: ColourwayId,
): void {
  if (name.trim() === '' || name.length > MOST_YARN_LETTERS) {
    throw problemError('colourway-name-unusable', { text: name, most: MOST_YARN_LETTERS });
  }
  if (colourways.some((one) => one.name === name && one.id !== own))
    throw problemError('colourway-name-taken', { name });
}

/** The colourway of that name, in capitals or not. Throws `colourway-unknown`. */
export function colourwayNamed({ colourways }: Pick<Project, 'colourways'>, given: string): Colourway {
  const plain = (name: string): string => name.trim().toLowerCase();
  const found =
    colourways.find(({ name }) => name === given) ?? colourways.find(({ name }) => plain(name) === plain(given));
  if (!found) throw problemError('colourway-unknown', { given, known: colourways.map(({ name }) => name) });
  return found;
}
