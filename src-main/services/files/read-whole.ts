/** Reading a file whole, within a bound. */
import { problemError } from '@shared/problem/index.ts';
import type { FileOperations } from './operations.ts';
import { readingProblem } from './problems.ts';

/** Nothing that the program reads comes near: a project of 1000 stitches and 4000 rows has 4 MB. */
export const MOST_BYTES_READ = 64 * 1024 * 1024;

/**
 * All bytes of the file. Throws `file-missing`, `file-is-folder`,
 * `file-too-large` or `file-not-readable`, each naming the path.
 */
export async function readWhole(
  files: FileOperations,
  path: string,
  most: number = MOST_BYTES_READ,
): Promise<Uint8Array<ArrayBuffer>> {
  try {
    const state = await files.state(path);
    if (state.kind === 'folder') throw problemError('file-is-folder', {}, path);
    // A pipe or a device could block for ever or never end.
    if (state.kind === 'other') throw problemError('file-not-readable', { detail: 'it is not a plain file' }, path);
    if (state.bytes > most) throw problemError('file-too-large', { bytes: state.bytes, most }, path);
    return await readAll(files, path, state.bytes, most);
  } catch (error) {
    throw readingProblem(error, path);
  }
}

/** The file may grow while it is read, so the size it had only says how much room to make. */
async function readAll(
  files: FileOperations,
  path: string,
  expected: number,
  most: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const file = await files.open(path, 'read');
  try {
    let bytes = new Uint8Array(expected + 1);
    let length = 0;
    for (;;) {
      const count = await file.read(bytes.subarray(length));
      if (count === 0) return bytes.slice(0, length);
      length += count;
      if (length > most) throw problemError('file-too-large', { bytes: length, most }, path);
      if (length === bytes.length) {
        const larger = new Uint8Array(length * 2);
        larger.set(bytes);
        bytes = larger;
      }
    }
  } finally {
    await file.close();
  }
}
