/**
 * Writing a file whole or not at all.
 *
 * The bytes are written aside in the same folder, flushed, and moved over the
 * old file in one step; then the folder is flushed. So whoever reads the path,
 * at any moment and after any crash or power cut, finds the old bytes or the
 * new ones. What is assumed of the platform: a rename within a folder is one
 * step, and flushed bytes stay.
 *
 * This one replaces whatever is there: for the program's own files. What a
 * person named is written by `writeChecked`.
 */
import { dirname } from 'node:path';
import { behindLinks, modeToKeep, renameWhenFree, writeAside, type Wait, fill } from './aside.ts';
import type { FileOperations } from './operations.ts';
import { writingProblem } from './problems.ts';
import { processesHere, type Processes } from './processes.ts';

/**
 * Writes `bytes` to `path`, following links, and keeps the permissions of the
 * file that was there. Throws `disk-full`, `folder-not-writable`,
 * `file-missing` (no such folder), `file-is-folder` or `file-not-written`, each
 * naming the path; the old file is then untouched and nothing is left aside.
 */
export async function writeWhole(
  files: FileOperations,
  wait: Wait,
  path: string,
  bytes: Uint8Array,
  processes: Processes = processesHere,
): Promise<void> {
  const writer = processes.begin();
  try {
    const target = await behindLinks(files, path);
    const aside = await writeAside(files, target, writer, bytes, await modeToKeep(files, target));
    try {
      await renameWhenFree(files, wait, aside, target);
    } catch (error) {
      await files.unlink(aside).catch(() => undefined);
      throw error;
    }
    // From here on every reader finds the new bytes, so a folder that will not
    // flush is no failure of this write.
    await files.flushFolder(dirname(target)).catch(() => undefined);
  } catch (error) {
    throw writingProblem(error, path);
  } finally {
    processes.end(writer);
  }
}

/**
 * Writes `bytes` behind what the file holds; when it returns they are on the
 * disk. Where it fails, or the machine does, a part of them may stand there.
 * Throws `file-missing` if there is no such file, and what `writeWhole` throws.
 */
export async function append(files: FileOperations, path: string, bytes: Uint8Array): Promise<void> {
  try {
    await fill(await files.open(path, 'append'), bytes, null);
  } catch (error) {
    throw writingProblem(error, path);
  }
}
