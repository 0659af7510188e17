/** A chart that was read, put in the place of a motif in the yarns that are there. */
import { MOST_COLOURS } from '../grid/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { MotifPicture } from '../picture/index.ts';
import { problemError } from '../problem/index.ts';
import {
  changeOf,
  freeYarnName,
  motifOf,
  redraw,
  setMotif,
  setPalette,
  type Change,
  type ChangeName,
  type Project,
  type Yarn,
} from '../project/index.ts';
import { yarnsOfColours } from './take-yarns.ts';

/** A project file holds names up to this long, and names of files may be longer. */
const MOST_LETTERS = 80;

export interface TakeOptions {
  readonly name: ChangeName;
  /** True where the picture says what is figure and what is ground, but not which yarns they are: ink on paper. */
  readonly keepsYarns: boolean;
  /** The name of a motif that nothing was drawn in before. */
  readonly title: string;
  /** Name of the yarn at a palette index; where it is taken, that of the next index is asked. */
  readonly yarn: (index: number) => string;
}

/**
 * The drawing of `motif` becomes that of the picture, in one step. Its colours
 * are knitted in the yarns of the project that look alike ({@link yarnsOfColours}),
 * and those that are missing are added. The only motif of a project lets go of
 * the yarns that it does not take; beside other motifs all stay, the ground
 * being the ground of all. Throws `motif-missing`, or `picture-too-many-colours`
 * if the palette cannot hold them.
 */
export function takePictureChange(
  project: Project,
  motif: MotifId,
  picture: MotifPicture,
  { name, keepsYarns, title, yarn }: TakeOptions,
): Change {
  const target = motifOf(project, motif);
  const main = project.mainYarn;
  const letsGo = !keepsYarns && project.motifs.length === 1;
  const yarns: Yarn[] = letsGo ? [] : [...project.yarns];
  const known = project.yarns.map((one) => one.name);
  const added = (colour: string): number => {
    const called = freeYarnName([...known, ...yarns.map((one) => one.name)], yarns.length, yarn);
    return yarns.push({ name: called, colour, count: null, onHand: null }) - 1;
  };
  const taken = (of: number): number => (letsGo ? yarns.push(project.yarns[of] as Yarn) - 1 : of);
  const others = project.yarns.flatMap((_, index) => (index === main ? [] : [index]));
  let figures = 0;
  const alike = keepsYarns ? [] : yarnsOfColours(project, picture);
  const places = picture.colours.map((colour, index) => {
    if (keepsYarns) return index === picture.ground ? main : (others[figures++] ?? added(colour));
    const of = alike[index];
    if (typeof of === 'number') return taken(of);
    // A colour that no cell has needs no yarn.
    return of === 'new' || index === picture.ground ? added(colour) : main;
  });
  if (yarns.length > MOST_COLOURS) {
    throw problemError('picture-too-many-colours', { colours: yarns.length, most: MOST_COLOURS });
  }
  const { width, height, cells } = picture.grid;
  const grid = { width, height, cells: cells.map((cell) => places[cell] as number) };
  const mainYarn = places[picture.ground] as number;
  const isBlank = target.grid.cells.every((cell) => cell === main);
  const called = isBlank ? title.slice(0, MOST_LETTERS) : target.name;
  const palette = setPalette(project, yarns, mainYarn);
  return changeOf(name, ...palette, redraw(target, grid), setMotif(motif, { name: called }));
}
