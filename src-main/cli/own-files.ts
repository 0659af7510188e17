/**
 * Writing files over those that an earlier call wrote, and over no others.
 *
 * In each folder that the command line writes into it keeps a list: of each
 * file, what it was made from and the stamps of what was written. A file that
 * is there is replaced if the list says that it was made from the same project
 * or photo and it still holds what was written then. The list is written
 * before the files, so that a call that is cut short is known as ours too; it is
 * read and written under its lock, so that two calls at once both stand in it.
 */
import { basename, join, relative } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { outcome, problemError, problemOf } from '@shared/problem/index.ts';
import { z } from '@shared/schema/index.ts';
import {
  nodeFiles,
  processesHere,
  readingProblem,
  readWhole,
  underLock,
  writeChecked,
  writeWhole,
  writingProblem,
  type Disk,
} from '../services/files/index.ts';
import { stampOf } from '../services/stamp.ts';

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

/** What files are made from: a file, or the sample that comes with the program. */
export type Source = { readonly kind: 'file'; readonly path: string } | { readonly kind: 'sample' };

export interface OwnFile {
  readonly name: string;
  readonly content: Uint8Array;
}

export interface WrittenFile {
  readonly path: string;
  readonly bytes: number;
  /** True if a file was there that an earlier call had written. */
  readonly replaced: boolean;
}

/**
 * Writes the files into the folder, absolute. Nothing is written where it
 * throws `file-missing` (there is no such folder), `files-kept` (one is there,
 * and `keeps` is set), `files-not-from-here` (one is there that is not ours to
 * replace), or what reading throws. Then each is written whole or not at all.
 */
export async function writeOwnFiles(
  folder: string,
  source: Source,
  files: readonly OwnFile[],
  keeps: boolean,
): Promise<WrittenFile[]> {
  // The lock would make it.
  await nodeFiles.names(folder).catch((error: unknown) => {
    throw readingProblem(error, folder);
  });
  const list = join(folder, LIST_NAME);
  const looked = await underLock(disk, list, () => noted(folder, source, files, keeps)).catch((error: unknown) => {
    throw writingProblem(error, list);
  });
  const written: WrittenFile[] = [];
  for (const { file, there } of looked) {
    const path = join(folder, file.name);
    const seen = there && stampOf(there);
    await writeChecked(disk, path, file.content, (now) => {
      if (now !== null && stampOf(now) !== seen) throw problemError('file-changed-elsewhere', {}, path);
    });
    written.push({ path, bytes: file.content.byteLength, replaced: there !== null });
  }
  return written;
}

interface Looked {
  readonly file: OwnFile;
  /** What is there. */
  readonly there: Uint8Array | null;
}

/** The files with what is there, once it is known that they may be written, and the list says that they are. */
async function noted(folder: string, source: Source, files: readonly OwnFile[], keeps: boolean): Promise<Looked[]> {
  const from = sourceText(folder, source);
  const list = await readList(folder);
  const looked: Looked[] = [];
  for (const file of files) looked.push({ file, there: await bytesAt(join(folder, file.name)) });

  const namesOf = (some: readonly Looked[]): string[] => some.map(({ file }) => file.name);
  const taken = looked.filter(({ there }) => there !== null);
  if (keeps && taken.length > 0) throw problemError('files-kept', { names: namesOf(taken) }, folder);
  const foreign = taken.filter(({ file, there }) => there && !isOurs(list[file.name], from, file, there));
  if (foreign.length > 0) throw problemError('files-not-from-here', { names: namesOf(foreign) }, folder);

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
function isOurs(noted: List[string] | undefined, from: string, { content }: OwnFile, there: Uint8Array): boolean {
  if (Buffer.compare(content, there) === 0) return true;
  return noted?.from === from && noted.stamps.includes(stampOf(there));
}

/** From the folder, so that both can be moved together. */
function sourceText(folder: string, source: Source): string {
  return source.kind === 'sample' ? 'sample' : `file:${relative(folder, source.path).replaceAll('\\', '/')}`;
}

const wait = (ms: number): Promise<void> => setTimeout(ms);
const disk: Disk = { files: nodeFiles, wait, processes: processesHere };

async function bytesAt(path: string): Promise<Uint8Array | null> {
  return readWhole(nodeFiles, path).catch((error: unknown) => {
    const { code } = problemOf(error);
    if (code === 'file-missing') return null;
    throw code === 'file-too-large' ? problemError('files-not-from-here', { names: [basename(path)] }, path) : error;
  });
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
