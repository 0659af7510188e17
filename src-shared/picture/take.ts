/** What was read from a picture, put in the place of a motif. */
import { MOST_COLOURS } from '../grid/index.ts';
import { problemError } from '../problem/index.ts';
import type { MotifId } from '../motif/index.ts';
import {
  changeOf,
  motifOf,
  redraw,
  setMotif,
  setProject,
  type Change,
  type ChangeName,
  type Project,
  type Yarn,
} from '../project/index.ts';
import type { MotifPicture } from './motif-picture.ts';

/** A project file holds names up to this long, and names of files may be longer. */
const MOST_LETTERS = 80;

export interface TakeOptions {
  readonly name: ChangeName;
  /** True where the picture says what is figure and what is ground, but not which yarns they are: ink on paper. */
  readonly keepsYarns: boolean;
  /** The name of a motif that nothing was drawn in before. */
  readonly title: string;
  /** Name of the yarn at a palette index. */
  readonly yarn: (index: number) => string;
}

/**
 * The drawing of `motif` becomes that of the picture, in one step. The only
 * motif of a project brings its yarns along; beside other motifs the yarns stay
 * and those that are missing are added, the ground being the ground of all.
 * Throws `motif-missing`, or `picture-too-many-colours` if the palette cannot
 * hold them.
 */
export function takePictureChange(
  project: Project,
  motif: MotifId,
  picture: MotifPicture,
  { name, keepsYarns, title, yarn }: TakeOptions,
): Change {
  const target = motifOf(project, motif);
  const isOnly = project.motifs.length === 1;
  const main = project.mainYarn;
  const yarns = keepsYarns || !isOnly ? [...project.yarns] : [];
  const known = (colour: string): Yarn | undefined => project.yarns.find((candidate) => candidate.colour === colour);
  const added = (colour: string): number =>
    yarns.push(known(colour) ?? { name: yarn(yarns.length), colour, tex: null }) - 1;
  const others = project.yarns.flatMap((_, index) => (index === main ? [] : [index]));
  let figures = 0;
  const places = picture.colours.map((colour, index) => {
    if (!keepsYarns && isOnly) return added(colour);
    if (index === picture.ground) return main;
    if (keepsYarns) return others[figures++] ?? added(colour);
    return others.find((other) => project.yarns[other]?.colour === colour) ?? added(colour);
  });
  if (yarns.length > MOST_COLOURS) {
    throw problemError('picture-too-many-colours', { colours: yarns.length, most: MOST_COLOURS });
  }
  const { width, height, cells } = picture.grid;
  const grid = { width, height, cells: cells.map((cell) => places[cell] as number) };
  const mainYarn = places[picture.ground] as number;
  const isBlank = target.grid.cells.every((cell) => cell === main);
  const called = isBlank ? title.slice(0, MOST_LETTERS) : target.name;
  return changeOf(name, setProject({ yarns, mainYarn }), redraw(target, grid), setMotif(motif, { name: called }));
}
