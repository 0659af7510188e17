/**
 * Writing a file that somebody else may be writing too.
 *
 * Whether the file may be written is asked of what is there at that moment, and
 * no other process of this program can write between the answer and the write:
 * both are done under a lock. A new file gets its name by a hard link, which
 * fails if any program at all was quicker. Whole or not at all, as
 * `writeWhole` is.
 */
import { dirname } from 'node:path';
import { problemOf } from '@shared/problem/index.ts';
import { behindLinks, modeToKeep, notWritten, renameWhenFree, writeAside } from './aside.ts';
import { clearLeftovers } from './leftovers.ts';
import { underLock, type Disk, type Lock } from './lock.ts';
import { failureCode, type FileOperations } from './operations.ts';
import { writingProblem } from './problems.ts';
import { readWhole } from './read-whole.ts';

/** Given the bytes that are there, or null where there is no file; throws if they may not be written over. */
export type Check = (there: Uint8Array | null) => void;

/** What a file system answers that knows no hard links. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EISDIR', 'UNKNOWN']);

/** Times that another program may come between before it is told. */
const MOST_TRIES = 4;

/**
 * Writes `bytes` to `path`, following links, if `check` lets it. Throws what
 * `check` throws, `file-busy` if another running process keeps the file locked,
 * and what `writeWhole` throws; what was there is then untouched and nothing is
 * left aside.
 */
export async function writeChecked(disk: Disk, path: string, bytes: Uint8Array, check: Check): Promise<void> {
  const { files, processes } = disk;
  const writer = processes.begin();
  try {
    const target = await behindLinks(files, path);
    const mode = await modeToKeep(files, target);
    // Asked before as well, so that a large file is not written aside in vain.
    if (mode !== null) check(await there(files, target));
    const aside = await writeAside(files, target, writer, bytes, mode);
    try {
      await underLock(disk, target, (held) => place(disk, held, aside, target, bytes, check));
    } finally {
      // After a rename there is none.
      await files.unlink(aside).catch(() => undefined);
    }
    await files.flushFolder(dirname(target)).catch(() => undefined);
    processes.end(writer);
    await clearLeftovers(files, processes, dirname(target));
  } catch (error) {
    throw writingProblem(error, path);
  } finally {
    processes.end(writer);
  }
}

async function place(
  { files, wait }: Disk,
  held: Lock,
  aside: string,
  target: string,
  bytes: Uint8Array,
  check: Check,
): Promise<void> {
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const now = await there(files, target);
    // A link over a network may be made and yet be answered as taken.
    if (tries > 0 && now !== null && Buffer.compare(now, bytes) === 0) return;
    check(now);
    if (!(await held.isHeld())) throw notWritten('it took too long');
    if (now !== null) return renameWhenFree(files, wait, aside, target);
    try {
      return await files.link(aside, target);
    } catch (error) {
      const code = failureCode(error) ?? '';
      // Nothing was there a moment ago, and none of ours can have come since.
      if (NO_LINKS.has(code)) return renameWhenFree(files, wait, aside, target);
      if (code !== 'EEXIST') throw error;
    }
  }
  throw notWritten('another program is writing it');
}

async function there(files: FileOperations, target: string): Promise<Uint8Array | null> {
  try {
    return await readWhole(files, target);
  } catch (error) {
    if (problemOf(error).code === 'file-missing') return null;
    throw error;
  }
}
