/** Which files are made of a project, and what they are called: no two alike, whatever pieces and sizes are called. */
import { exportSources, type ExportKind } from '@shared/host/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { copiesIn } from '@shared/pattern/index.ts';
import { LOOKED_AT, motifOf, placesIn, type Place, type ProjectAt, type Scope } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { sheetWords } from '@shared/words/sheet.ts';
import { distinctNames, safeFileName } from './file-name.ts';
import { MAKERS } from './makers.ts';

/** A file by its name, and what it is made of. */
export type FileToMake = { readonly name: string; readonly kind: ExportKind } & (
  | { readonly of: 'motif'; readonly motif: Motif; readonly place: ProjectAt }
  | { readonly of: 'piece'; readonly place: ProjectAt }
  /** All pieces in one size. */
  | { readonly of: 'garment'; readonly places: readonly ProjectAt[] }
);

/** Of the name of a project and of a piece, so that there is room for those beside it. */
const MOST_BYTES_BESIDE = 60;

/**
 * The files that these kinds come to, size by size. The placement sheet of
 * several pieces is one file for each size: a garment is knitted in one of them,
 * and printed at one go. All other files are of one piece in one size each.
 */
export function filesOf(project: ProjectAt, kinds: readonly ExportKind[], scope: Scope): FileToMake[] {
  const named = namesIn(project);
  return placesIn(project, scope).flatMap((places) =>
    [...new Set(kinds)].flatMap((kind): FileToMake[] => {
      const [first] = places;
      if (kind === 'sheet-pdf' && first && places.length > 1) {
        return [{ of: 'garment', name: fileName(named.garment(first.at.size), kind, 1), kind, places }];
      }
      return places.flatMap((place) => filesOfPlace(named.place(place.at), place, kind));
    }),
  );
}

/** The names of all files that these kinds come to. */
export function exportFileNames(project: ProjectAt, kinds: readonly ExportKind[], scope = LOOKED_AT): string[] {
  return filesOf(project, kinds, scope).map(({ name }) => name);
}

function filesOfPlace(named: string, place: ProjectAt, kind: ExportKind): FileToMake[] {
  if (exportSources[kind] === 'plan') return [{ of: 'piece', name: fileName(named, kind, 1), kind, place }];
  return chartedMotifs(place).map((motif, index) => ({
    of: 'motif',
    name: fileName(named, kind, index + 1),
    kind,
    motif,
    place,
  }));
}

/** `Skerry sleeve - chart.png`; the charts of further motifs are numbered from 2. */
function fileName(named: string, kind: ExportKind, number: number): string {
  const said = sheetWords.files[kind];
  return `${named} - ${number === 1 ? said : `${said} ${number}`}.${MAKERS[kind].ending}`;
}

/** The motifs that are placed, in that order; the first there is where none are. */
function chartedMotifs(project: ProjectAt): Motif[] {
  const placed = new Set(copiesIn(project).map(({ motif }) => motif));
  return placed.size > 0 ? [...placed].map((id) => motifOf(project, id)) : project.motifs.slice(0, 1);
}

/** What files begin with. */
interface Names {
  readonly place: (at: Place) => string;
  /** Those of all pieces in a size. */
  readonly garment: (size: Place['size']) => string;
}

/**
 * The name of the project, and where it has several, of the piece and of the
 * size: `Skerry, sleeve, size M`. Of no two places does it come out alike, so
 * that files of all of them go into one folder.
 */
function namesIn({ name, whole: { pieces, sizes } }: ProjectAt): Names {
  const { unnamed, allPieces } = sheetWords.files;
  const isOne = pieces.length * sizes.length === 1;
  const ofProject = safeFileName(name, unnamed, isOne ? undefined : MOST_BYTES_BESIDE);
  const inSize = (named: string, size: { readonly name: string }): string =>
    sizes.length === 1 ? named : words.sizes.named(named, safeFileName(size.name, unnamed));
  const ofPieces = pieces.map((piece) =>
    words.pieces.named([
      ofProject,
      ...(pieces.length === 1 ? [] : [safeFileName(piece.name, unnamed, MOST_BYTES_BESIDE)]),
    ]),
  );
  const all = distinctNames([
    ...ofPieces.flatMap((named) => sizes.map((size) => inSize(named, size))),
    ...sizes.map((size) => inSize(words.pieces.named([ofProject, allPieces]), size)),
  ]);
  const indexIn = (things: readonly { readonly id: string }[], wanted: string): number =>
    things.findIndex(({ id }) => id === wanted);
  const called = (piece: number, size: Place['size']): string =>
    all[piece * sizes.length + indexIn(sizes, size)] ?? ofProject;
  return {
    place: ({ piece, size }) => called(indexIn(pieces, piece), size),
    garment: (size) => called(pieces.length, size),
  };
}
