/**
 * Writing the files of a call over what is there: over nothing unless the
 * person said so, and then over no file of another kind.
 */
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { problemError, problemOf } from '@shared/problem/index.ts';
import { assertOurKind } from '../services/file-kinds.ts';
import {
  nodeFiles,
  processesHere,
  readingProblem,
  readWhole,
  writeChecked,
  type Disk,
} from '../services/files/index.ts';
import { stampOf } from '../services/stamp.ts';

export interface NamedContent {
  readonly name: string;
  readonly content: Uint8Array;
}

/** A file that is to be written, with what is there. */
export interface Looked {
  readonly file: NamedContent;
  readonly there: Uint8Array | null;
}

export interface WrittenFile {
  readonly path: string;
  readonly bytes: number;
  /** True if a file was there. */
  readonly replaced: boolean;
}

export const wait = (ms: number): Promise<void> => setTimeout(ms);
export const disk: Disk = { files: nodeFiles, wait, processes: processesHere };

/**
 * Writes the files into the folder, absolute, each whole or not at all. Nothing
 * is written where it throws `file-missing` (there is no such folder),
 * `files-there` (which names those that are there, unless `replaces`),
 * `file-of-other-kind`, or what reading throws.
 */
export async function writeNamed(
  folder: string,
  files: readonly NamedContent[],
  replaces: boolean,
): Promise<WrittenFile[]> {
  await assertThere(folder);
  const looked = await lookAt(folder, files);
  if (!replaces) assertNew(folder, looked);
  assertReplaceable(folder, looked);
  return writeLooked(folder, looked);
}

/** Throws `files-there` with those of the names that a file has, or what reading throws. */
export async function assertNoneThere(folder: string, names: readonly string[]): Promise<void> {
  assertNew(
    folder,
    await lookAt(
      folder,
      names.map((name) => ({ name, content: new Uint8Array() })),
    ),
  );
}

function assertNew(folder: string, looked: readonly Looked[]): void {
  const taken = looked.filter(({ there }) => there !== null).map(({ file }) => file.name);
  if (taken.length > 0) throw problemError('files-there', { names: taken }, folder);
}

export async function assertThere(folder: string): Promise<void> {
  await nodeFiles.names(folder).catch((error: unknown) => {
    throw readingProblem(error, folder);
  });
}

export async function lookAt(folder: string, files: readonly NamedContent[]): Promise<Looked[]> {
  const looked: Looked[] = [];
  for (const file of files) looked.push({ file, there: await bytesAt(join(folder, file.name)) });
  return looked;
}

/** Throws `file-of-other-kind` for what the program does not write under such a name. */
export function assertReplaceable(folder: string, looked: readonly Looked[]): void {
  for (const { file, there } of looked) if (there !== null) assertOurKind(join(folder, file.name), there);
}

/** Writes over what was looked at, and nothing that came since. */
export async function writeLooked(folder: string, looked: readonly Looked[]): Promise<WrittenFile[]> {
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

async function bytesAt(path: string): Promise<Uint8Array | null> {
  return readWhole(nodeFiles, path).catch((error: unknown) => {
    const { code } = problemOf(error);
    if (code === 'file-missing') return null;
    // Nothing that the program writes is so large.
    throw code === 'file-too-large' ? problemError('file-of-other-kind', {}, path) : error;
  });
}
