/**
 * Writing files over those that an earlier call wrote, and over no others
 * unless the person said so.
 *
 * In each folder that the command line writes into it keeps a list: of each
 * file, what it was made from and the stamps of what was written. A file that
 * is there is replaced if the list says that it was made from the same project
 * or photo and it still holds what was written then. The list is written
 * before the files, so that a call that is cut short is known as ours too; it is
 * read and written under its lock, so that two calls at once both stand in it.
 */
import { join, relative } from 'node:path';
import { outcome, problemError } from '@shared/problem/index.ts';
import { z } from '@shared/schema/index.ts';
import { nodeFiles, readWhole, underLock, writeWhole, writingProblem } from '../services/files/index.ts';
import { stampOf } from '../services/stamp.ts';
import {
  assertReplaceable,
  assertThere,
  disk,
  lookAt,
  wait,
  writeLooked,
  type Looked,
  type NamedContent,
  type WrittenFile,
} from './replacing.ts';

/** The name of the list, for help pages. */
export const LIST_NAME = '.walewright-written.json';

const MOST_LIST_BYTES = 4_000_000;

/** Of one file, the newest first: what calls at the same time wrote, or began to. */
const MOST_STAMPS = 4;

const listSchema = z.strictObject({
  format: z.literal('walewright-written'),
  files: z.record(z.string(), z.strictObject({ from: z.string(), stamps: z.array(z.string()) })),
});
type List = z.infer<typeof listSchema>['files'];

/** What files are made from: a file, several together, or the sample that comes with the program. */
export type Source =
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'files'; readonly paths: readonly string[] }
  | { readonly kind: 'sample' };

/**
 * Writes the files into the folder, absolute. Nothing is written where it
 * throws `file-missing` (there is no such folder), `files-not-from-here` (one
 * is there that is not ours to replace, unless `replaces`),
 * `file-of-other-kind`, or what reading throws. Then each is written whole or
 * not at all.
 */
export async function writeOwnFiles(
  folder: string,
  source: Source,
  files: readonly NamedContent[],
  replaces: boolean,
): Promise<WrittenFile[]> {
  // The lock would make it.
  await assertThere(folder);
  const list = join(folder, LIST_NAME);
  const looked = await underLock(disk, list, () => noted(folder, source, files, replaces)).catch((error: unknown) => {
    throw writingProblem(error, list);
  });
  return writeLooked(folder, looked);
}

/** The files with what is there, once it is known that they may be written, and the list says that they are. */
async function noted(
  folder: string,
  source: Source,
  files: readonly NamedContent[],
  replaces: boolean,
): Promise<readonly Looked[]> {
  const from = sourceText(folder, source);
  const list = await readList(folder);
  const looked = await lookAt(folder, files);
  const foreign = looked.filter(({ file, there }) => there && !isOurs(list[file.name], from, file, there));
  if (!replaces && foreign.length > 0) {
    throw problemError('files-not-from-here', { names: foreign.map(({ file }) => file.name) }, folder);
  }
  assertReplaceable(folder, foreign);

  for (const { file, there } of looked) {
    const earlier = list[file.name];
    const stamps = [file.content, ...(there ? [there] : [])].map(stampOf);
    if (earlier?.from === from) stamps.push(...earlier.stamps);
    list[file.name] = { from, stamps: [...new Set(stamps)].slice(0, MOST_STAMPS) };
  }
  await writeWhole(nodeFiles, wait, join(folder, LIST_NAME), listBytes(list));
  return looked;
}

/** What holds just what would be written loses nothing by it, whoever wrote it. */
function isOurs(noted: List[string] | undefined, from: string, { content }: NamedContent, there: Uint8Array): boolean {
  if (Buffer.compare(content, there) === 0) return true;
  return noted?.from === from && noted.stamps.includes(stampOf(there));
}

/** From the folder, so that both can be moved together. */
function sourceText(folder: string, source: Source): string {
  const fromHere = (path: string): string => relative(folder, path).replaceAll('\\', '/');
  if (source.kind === 'sample') return 'sample';
  return source.kind === 'file' ? `file:${fromHere(source.path)}` : `files:${source.paths.map(fromHere).join(':')}`;
}

/** A list that cannot be read names no file. */
async function readList(folder: string): Promise<List> {
  const bytes = await readWhole(nodeFiles, join(folder, LIST_NAME), MOST_LIST_BYTES).catch(() => null);
  if (bytes === null) return {};
  const list = outcome(() => listSchema.parse(JSON.parse(new TextDecoder().decode(bytes))));
  return list.ok ? list.value.files : {};
}

function listBytes(files: List): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify({ format: 'walewright-written', files }, null, 2)}\n`);
}
