/** A project around a picture that was read. */
import type { Shows } from '../bed/index.ts';
import { projectAround, type Project, type Yarn } from '../project/index.ts';
import type { MotifPicture } from './motif-picture.ts';

/** What the parts of the project are called; `words.pictures` has the usual ones. */
export interface PictureNames {
  readonly project: string;
  readonly motif: string;
  /** Name of the yarn at a palette index; 0 is the main yarn. `yarns` is how many there are. */
  readonly yarn: (index: number, yarns: number) => string;
}

/** One yarn for each colour, ground first. What the yarns weigh is not known from a picture. */
export function yarnsOfPicture(picture: MotifPicture, name: PictureNames['yarn']): Yarn[] {
  const yarns = picture.colours.length;
  return picture.colours.map((colour, index) => ({ name: name(index, yarns), colour, tex: null }));
}

/** One motif, one group of one copy, on the plain piece that new projects start with. */
export function projectFromPicture(picture: MotifPicture, names: PictureNames, shows: Shows = 'worn'): Project {
  const yarns = yarnsOfPicture(picture, names.yarn);
  return projectAround(names.project, names.motif, picture.grid, picture.ground, shows, yarns);
}
