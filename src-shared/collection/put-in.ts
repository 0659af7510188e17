/**
 * A motif of the collection put in a project, in the yarns that are there.
 *
 * The ground of a project is the ground of all its motifs, so the ground of the
 * motif becomes that of the project. Where the motif has a figure in the
 * project's ground, that figure takes the place of the motif's ground: a white
 * star on blue comes as a blue star into a project on white.
 */
import { MOST_COLOURS } from '../grid/index.ts';
import { MOST_MOTIF_LETTERS, type MotifId } from '../motif/index.ts';
import { problemError } from '../problem/index.ts';
import {
  changeOf,
  freeYarnName,
  insertInto,
  MOST_MOTIFS,
  MOST_YARN_LETTERS,
  setPalette,
  yarnsUsed,
  type Change,
  type Project,
  type Yarn,
} from '../project/index.ts';
import { ALIKE, hexDifference, yarnsOfColours } from '../reading/index.ts';
import { onlyMotif } from './alone.ts';

/** A change that puts a motif in, and what a person is told of it. */
export interface PutIn {
  readonly change: Change;
  /** As it is called in the project. */
  readonly name: string;
  /** Names of the yarns that come with it. */
  readonly added: readonly string[];
  /** The yarns of its ground and of a figure that took each other's place, by the names that they had; null: none did. */
  readonly exchanged: { readonly ground: string; readonly figure: string } | null;
}

/**
 * The motif of `kept`, a project that holds one, comes behind the motif
 * `behind` under an `id` that none had, in one step. Throws `motifs-several`,
 * `motifs-too-many`, or `palette-full`.
 */
export function putIn(project: Project, kept: Project, behind: MotifId, id: MotifId): PutIn {
  const motif = onlyMotif(kept);
  if (project.motifs.length >= MOST_MOTIFS) throw problemError('motifs-too-many', { most: MOST_MOTIFS });
  const drawnIn = yarnsUsed(motif.grid, kept.mainYarn);
  const { yarns: ownYarns, exchanged } = onGround(kept, drawnIn, project);
  const colours = ownYarns.map(({ colour }) => colour);
  // As if it were in already: beside other motifs its ground is that of all.
  const beside = { ...project, motifs: [...project.motifs, motif] };
  const alike = yarnsOfColours(beside, { grid: motif.grid, colours, ground: kept.mainYarn });

  const yarns: Yarn[] = [...project.yarns];
  const places = alike.map((place, index) => {
    if (place !== 'new') return place;
    const { name, ...yarn } = ownYarns[index] as Yarn;
    const called = freeYarnName(
      yarns.map((one) => one.name),
      1,
      (number) => numbered(name, number, MOST_YARN_LETTERS),
    );
    return yarns.push({ ...yarn, name: called }) - 1;
  });
  if (yarns.length > MOST_COLOURS) throw problemError('palette-full', { yarns: yarns.length, most: MOST_COLOURS });

  const added = yarns.slice(project.yarns.length);
  const name = freeYarnName(
    project.motifs.map((one) => one.name),
    1,
    (number) => numbered(motif.name, number, MOST_MOTIF_LETTERS),
  );
  const grid = { ...motif.grid, cells: motif.grid.cells.map((cell) => places[cell] as number) };
  const at = project.motifs.findIndex((one) => one.id === behind) + 1;
  const insert = insertInto('motifs', at, { ...motif, id, name, grid, underlay: null });
  const change =
    added.length === 0
      ? changeOf('add-motif', insert)
      : changeOf('add-motif', ...setPalette(project, yarns, project.mainYarn), insert);
  return { change, name, added: added.map((yarn) => yarn.name), exchanged };
}

/** The yarns of the motif once a figure in the project's ground has the yarn of its ground instead. */
function onGround(
  { yarns, mainYarn }: Project,
  drawnIn: readonly number[],
  project: Project,
): { readonly yarns: readonly Yarn[]; readonly exchanged: PutIn['exchanged'] } {
  const there = project.yarns[project.mainYarn] as Yarn;
  const ground = yarns[mainYarn] as Yarn;
  const apart = (index: number): number => hexDifference((yarns[index] as Yarn).colour, there.colour);
  const [nearest] = drawnIn.filter((index) => index !== mainYarn).sort((a, b) => apart(a) - apart(b));
  if (nearest === undefined || apart(nearest) > ALIKE || apart(mainYarn) <= apart(nearest)) {
    return { yarns, exchanged: null };
  }
  const figure = yarns[nearest] as Yarn;
  return {
    yarns: yarns.with(nearest, ground).with(mainYarn, figure),
    exchanged: { ground: ground.name, figure: figure.name },
  };
}

/** `star`, then `star (2)`, no longer than `most` letters. */
function numbered(name: string, number: number, most: number): string {
  const behind = number === 1 ? '' : ` (${number})`;
  return name.slice(0, most - behind.length) + behind;
}
