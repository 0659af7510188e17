/** A project around a picture that was read. */
import type { Shows } from '../bed/index.ts';
import { projectAround, type Project, type Yarn } from '../project/index.ts';
import type { MotifPicture } from './motif-picture.ts';

/** What the parts of the project are called; `words.pictures` has the usual ones. */
export interface PictureNames {
  readonly project: string;
  readonly motif: string;
  /** Name of the yarn at a palette index; 0 is the main yarn. */
  readonly yarn: (index: number) => string;
}

/** One yarn for each colour, ground first. What the yarns weigh is not known from a picture. */
export function yarnsOfPicture(picture: MotifPicture, name: PictureNames['yarn']): Yarn[] {
  return picture.colours.map((colour, index) => ({ name: name(index), colour, count: null, onHand: null }));
}

/** A project file holds names up to this long, and names of files may be longer. */
const MOST_LETTERS = 80;

/** One motif, one group of one copy, on the plain piece that new projects start with. */
export function projectFromPicture(picture: MotifPicture, names: PictureNames, shows: Shows = 'worn'): Project {
  const yarns = yarnsOfPicture(picture, names.yarn);
  const [project, motif] = [names.project, names.motif].map((name) => name.slice(0, MOST_LETTERS)) as [string, string];
  return projectAround(project, motif, picture.grid, picture.ground, shows, yarns);
}
