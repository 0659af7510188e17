/**
 * Pictures to trace, told apart from the project that they belong to: in its
 * text, and in that of edits, a name stands for each. A picture is a thousand
 * times as long as all else, and work is kept after every stroke.
 */
import type { Motif } from '../motif/index.ts';
import type { Edit } from './edit.ts';
import type { Project } from './model.ts';

/** By the picture (its data URL), the SHA-256 of it in hexadecimal digits. */
export type PictureHashes = ReadonlyMap<string, string>;

/** No data URL begins like that. */
const MARK = 'apart:';
/** As a field in JSON, with its name or without blanks: within a text of JSON no quote stands bare, so it is nothing else. */
const APART = /("picture": ?")apart:([0-9a-f]{64})(?=")/g;

export function picturesOf({ motifs }: Project): string[] {
  return motifs.flatMap(({ underlay }) => (underlay ? [underlay.picture] : []));
}

/** The project with a name for each picture that has a hash, for its text alone: it could not be opened. */
export function picturesApart(project: Project, hashes: PictureHashes): Project {
  return { ...project, motifs: project.motifs.map((motif) => motifApart(motif, hashes)) };
}

export function picturesOfEdits(edits: readonly Edit[]): string[] {
  const found: string[] = [];
  for (const edit of edits) eachPicture(edit, (picture) => (found.push(picture), picture));
  return found;
}

/** The edits with a name for each picture that has a hash. */
export function editsApart(edits: readonly Edit[], hashes: PictureHashes): Edit[] {
  return edits.map((edit) => eachPicture(edit, (picture) => nameOf(picture, hashes)));
}

/** The hashes of the pictures that a text has names for, each once. */
export function hashesIn(text: string): string[] {
  return [...new Set([...text.matchAll(APART)].map(([, , hash]) => hash as string))];
}

/** The text with its pictures in it, as `pictureOf` gives them. Throws `RangeError` where it gives none. */
export function picturesPutBack(text: string, pictureOf: (hash: string) => string | undefined): string {
  return text.replace(APART, (_, field: string, hash: string) => {
    const picture = pictureOf(hash);
    if (picture === undefined) throw new RangeError('A picture of the work is not there');
    return field + picture;
  });
}

function nameOf(picture: string, hashes: PictureHashes): string {
  const hash = hashes.get(picture);
  return hash === undefined ? picture : MARK + hash;
}

function motifApart<M extends Partial<Motif>>(motif: M, hashes: PictureHashes): M {
  return inMotif(motif, (picture) => nameOf(picture, hashes));
}

function inMotif<M extends Partial<Motif>>(motif: M, change: (picture: string) => string): M {
  const { underlay } = motif;
  return underlay ? { ...motif, underlay: { ...underlay, picture: change(underlay.picture) } } : motif;
}

/** The edit with `change` of each picture in it. */
function eachPicture(edit: Edit, change: (picture: string) => string): Edit {
  if (edit.kind === 'insert' && edit.list === 'motifs') return { ...edit, item: inMotif(edit.item, change) };
  if (edit.kind !== 'set') return edit;
  if (edit.of === 'motif') return { ...edit, to: inMotif(edit.to, change) };
  const { picture } = edit.of === 'underlay' ? edit.to : {};
  return edit.of === 'underlay' && picture !== undefined
    ? { ...edit, to: { ...edit.to, picture: change(picture) } }
    : edit;
}
