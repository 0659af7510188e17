/** Bytes written beside the file that they are meant for, whole and on the disk before they take its name. */
import { dirname, join, resolve } from 'node:path';
import { problemError, type ProblemError } from '@shared/problem/index.ts';
import { asideName } from './leftovers.ts';
import { failureCode, type FileOperations, type OpenedFile } from './operations.ts';

export type Wait = (ms: number) => Promise<void>;

/** Between tries of a rename, in ms; a second in all. Scanners on Windows hold a fresh file for moments. */
const RENAME_WAITS = [10, 20, 40, 80, 160, 320, 370];
const HELD_FOR_A_MOMENT = new Set(['EPERM', 'EBUSY']);

/** What a new file may be read and written by, less the user's mask. */
const DEFAULT_MODE = 0o666;

/** Writes in vain before a file that takes no bytes counts as broken. */
const MOST_EMPTY_WRITES = 8;

/** Links followed before they count as a circle, as Linux has it. */
const MOST_LINKS = 40;

/**
 * Writes the bytes aside under the name of `writer`, flushed, with the
 * permissions `mode` or those of a new file, and says where. Leaves nothing
 * behind if it fails.
 */
export async function writeAside(
  files: FileOperations,
  target: string,
  writer: string,
  bytes: Uint8Array,
  mode: number | null,
): Promise<string> {
  const aside = join(dirname(target), asideName(writer));
  const file = await files.open(aside, 'new', mode ?? DEFAULT_MODE);
  try {
    await fill(file, bytes, mode);
  } catch (error) {
    // The first error is the one to tell; a failed tidying would hide it.
    await files.unlink(aside).catch(() => undefined);
    throw error;
  }
  return aside;
}

/** Writes all bytes to the opened file, with the permissions `mode` if given, flushes and closes it. */
export async function fill(file: OpenedFile, bytes: Uint8Array, mode: number | null): Promise<void> {
  try {
    await writeAll(file, bytes);
    if (mode !== null) await giveMode(file, mode);
    await file.flush();
  } catch (error) {
    await file.close().catch(() => undefined);
    throw error;
  }
  await file.close();
}

async function writeAll(file: OpenedFile, bytes: Uint8Array): Promise<void> {
  let rest = bytes;
  let emptyWrites = 0;
  while (rest.length > 0) {
    const taken = await file.write(rest);
    emptyWrites = taken === 0 ? emptyWrites + 1 : 0;
    if (emptyWrites === MOST_EMPTY_WRITES) throw notWritten('it takes no more bytes');
    rest = rest.subarray(taken);
  }
}

/** The file was made with no more permissions than `mode`; this adds those that the user's mask took away. */
async function giveMode(file: OpenedFile, mode: number): Promise<void> {
  try {
    await file.setMode(mode);
  } catch (error) {
    // File systems without permissions refuse; there is nothing to keep there.
    if (!['EPERM', 'ENOTSUP', 'ENOSYS'].includes(failureCode(error) ?? '')) throw error;
  }
}

/** Renames over whatever has the name `to`. */
export async function renameWhenFree(files: FileOperations, wait: Wait, from: string, to: string): Promise<void> {
  for (const ms of RENAME_WAITS) {
    try {
      return await files.rename(from, to);
    } catch (error) {
      if (!HELD_FOR_A_MOMENT.has(failureCode(error) ?? '')) throw error;
      await wait(ms);
    }
  }
  await files.rename(from, to);
}

/** The file that a link, or a chain of them, ends at; it need not exist. */
export async function behindLinks(files: FileOperations, path: string): Promise<string> {
  let target = resolve(path);
  for (let links = 0; links < MOST_LINKS; links += 1) {
    let next: string;
    try {
      next = await files.readLink(target);
    } catch (error) {
      // EINVAL: no link. ENOENT: nothing there. UNKNOWN: Windows' word for the first.
      if (['EINVAL', 'ENOENT', 'UNKNOWN'].includes(failureCode(error) ?? '')) return target;
      throw error;
    }
    target = resolve(dirname(target), next);
  }
  throw notWritten('its links lead in a circle');
}

/** Permissions of the file that will be replaced, or null if there is none. */
export async function modeToKeep(files: FileOperations, target: string): Promise<number | null> {
  let state;
  try {
    state = await files.state(target);
  } catch (error) {
    if (failureCode(error) === 'ENOENT') return null;
    throw error;
  }
  if (state.kind === 'folder') throw problemError('file-is-folder', {}, target);
  if (state.kind === 'other') throw notWritten('it is not a plain file');
  // A rename would replace even a file that is write-protected; opening it asks first.
  const file = await files.open(target, 'change').catch((error: unknown) => {
    const isProtected = ['EACCES', 'EPERM'].includes(failureCode(error) ?? '');
    throw isProtected ? notWritten('it is write-protected') : error;
  });
  await file.close();
  return state.mode;
}

export function notWritten(detail: string): ProblemError {
  return problemError('file-not-written', { detail });
}
