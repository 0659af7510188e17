/** A picture turned into cells, put in the place of a motif in the yarns that are there. */
import { MOST_COLOURS } from '../grid/index.ts';
import { problemError } from '../problem/index.ts';
import type { MotifId } from '../motif/index.ts';
import {
  changeOf,
  freeYarnName,
  motifOf,
  redraw,
  setPalette,
  type Change,
  type Project,
  type Yarn,
} from '../project/index.ts';
import { hexDifference } from './colour-difference.ts';
import type { PictureMotif } from './picture-to-cells.ts';

/**
 * Colours no further apart than this are taken for the same yarn. About one
 * step of CIEDE2000 is just seen side by side; nobody lays a picture beside yarn.
 */
export const ALIKE = 6;

/**
 * For each colour of the picture the yarn it is knitted in: an index of the
 * palette, a new yarn, or null for a colour that no cell has.
 */
export type YarnOfColour = number | 'new' | null;

/**
 * Looks for yarns that are there already: the most alike pairs first, each yarn
 * for one colour. Beside other motifs the ground of the picture is the ground
 * of all; alone it may be any yarn.
 */
export function yarnsOfColours(project: Project, { grid, colours, ground }: PictureMotif): YarnOfColour[] {
  const used = new Set(grid.cells);
  const found: YarnOfColour[] = colours.map((_, index) => (used.has(index) ? 'new' : null));
  const taken = new Set<number>();
  if (project.motifs.length > 1) {
    found[ground] = project.mainYarn;
    taken.add(project.mainYarn);
  }
  const pairs = colours.flatMap((colour, index) =>
    found[index] !== 'new'
      ? []
      : project.yarns.map((yarn, of) => ({ index, of, apart: hexDifference(colour, yarn.colour) })),
  );
  for (const { index, of, apart } of pairs.sort((a, b) => a.apart - b.apart)) {
    if (apart > ALIKE || found[index] !== 'new' || taken.has(of)) continue;
    found[index] = of;
    taken.add(of);
  }
  return found;
}

/**
 * The drawing of `motif` becomes that of the picture, in one step. Yarns that
 * are not there are added; none is taken away. `yarn` names the one at a palette
 * index, or the next index whose name is free. Throws `motif-missing`, or `palette-full`.
 */
export function readPictureChange(
  project: Project,
  motif: MotifId,
  picture: PictureMotif,
  yarn: (index: number) => string,
): Change {
  const target = motifOf(project, motif);
  const yarns: Yarn[] = [...project.yarns];
  const places = yarnsOfColours(project, picture).map((of, index) => {
    if (of !== 'new') return of;
    const called = freeYarnName(
      yarns.map(({ name }) => name),
      yarns.length,
      yarn,
    );
    return yarns.push({ name: called, colour: picture.colours[index] as string, count: null, onHand: null }) - 1;
  });
  if (yarns.length > MOST_COLOURS) throw problemError('palette-full', { yarns: yarns.length, most: MOST_COLOURS });
  const { width, height, cells } = picture.grid;
  const grid = { width, height, cells: cells.map((cell) => places[cell] as number) };
  const mainYarn = places[picture.ground] as number;
  return changeOf('read-picture', ...setPalette(project, yarns, mainYarn), redraw(target, grid));
}
