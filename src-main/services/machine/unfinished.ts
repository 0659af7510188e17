/**
 * Files that are being written aside.
 *
 * A document is written aside and moved into place, so a run that is killed in
 * between leaves a file beside the document, wherever that is. Each run notes
 * what it writes aside before it begins; a later start takes away what the note
 * of a dead run names, and nothing else.
 */
import { open, readFile, rm, unlink } from 'node:fs/promises';
import { basename, dirname, isAbsolute } from 'node:path';
import { outcome } from '@shared/problem/index.ts';
import { clearLeftovers, failureCode, nodeFiles, processesHere, type FileOperations } from '../files/index.ts';
import { inTurn } from '../in-turn.ts';

export interface Unfinished {
  /** `files`, plain functions all, with every file that is written aside noted until it is moved or gone. */
  watch(files: FileOperations): FileOperations;
  close(): Promise<void>;
}

/** Keeps its note at `place`. A note that cannot be written stops no save. */
export async function noteUnfinished(place: string): Promise<Unfinished> {
  const note = await open(place, 'a', 0o600);
  const turn = inTurn();
  const going = new Set<string>();

  const begin = (path: string): Promise<void> =>
    turn(place, async () => {
      going.add(path);
      await note.appendFile(`${JSON.stringify(path)}\n`).catch(() => undefined);
    });
  const end = (path: string): Promise<void> =>
    turn(place, async () => {
      if (!going.delete(path) || going.size > 0) return;
      await note.truncate(0).catch(() => undefined);
    });

  return {
    watch: (files) => ({
      ...files,
      async open(path, how, mode) {
        if (how !== 'new' || !isAside(path)) return files.open(path, how, mode);
        await begin(path);
        try {
          return await files.open(path, how, mode);
        } catch (error) {
          await end(path);
          throw error;
        }
      },
      // A lock is a folder that is made aside, moved into place, and gone when the writing is done.
      async makeFolder(folder, mode) {
        if (isAside(dirname(folder))) await begin(dirname(folder));
        await files.makeFolder(folder, mode);
      },
      async removeFolder(folder) {
        try {
          await files.removeFolder(folder);
        } catch (error) {
          // Gone, or another's by now: a lock that was let go is taken at once where somebody waits for it.
          if (['ENOENT', 'ENOTEMPTY', 'EEXIST'].includes(failureCode(error) ?? '')) await end(folder);
          throw error;
        }
        await end(folder);
      },
      async rename(from, to) {
        await files.rename(from, to);
        if (isLock(to) && going.delete(from)) going.add(to);
        else await end(from);
      },
      async unlink(path) {
        try {
          await files.unlink(path);
        } catch (error) {
          if (failureCode(error) === 'ENOENT') await end(path);
          throw error;
        }
        await end(path);
      },
    }),
    async close() {
      await note.close();
      await rm(place, { force: true });
    },
  };
}

/** Takes away what the note of a dead run names. Rejects if something cannot be taken away now. */
export async function clearUnfinished(place: string): Promise<void> {
  const text = await readFile(place, 'utf8').catch((error: unknown) => {
    if (failureCode(error) === 'ENOENT') return '';
    throw error;
  });
  for (const line of text.split('\n')) {
    const path = outcome(() => JSON.parse(line) as unknown);
    // A line that broke off names a file that was not begun.
    if (!path.ok || typeof path.value !== 'string' || !isAside(path.value)) continue;
    // What was to be a lock, or is one by now.
    await clearLeftovers(nodeFiles, processesHere, dirname(path.value));
    await unlink(path.value).catch((error: unknown) => {
      // Moved into place before the run ended, or its folder is gone with all in it.
      if (!['ENOENT', 'ENOTDIR'].includes(failureCode(error) ?? '')) throw error;
    });
  }
  await rm(place, { force: true });
}

/** True for the names of files written aside, and no others. */
function isAside(path: string): boolean {
  return isAbsolute(path) && /^\.walewright-[0-9a-z-]+\.tmp$/.test(basename(path));
}

/** True for the place of a lock beside a document. */
function isLock(path: string): boolean {
  return /^\.walewright-[0-9a-f]+\.lock$/.test(basename(path));
}
