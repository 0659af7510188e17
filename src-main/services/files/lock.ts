/**
 * One process at a time over a file.
 *
 * The lock is a folder beside the file, with a folder in it that names the
 * holder. It is made elsewhere and moved to its place, which is one step and
 * fails while a folder that holds something is there: so it is never seen
 * without its holder. A holder whose process has ended is taken out by its own
 * name: whoever comes too late for that takes out nobody else.
 */
import { createHash } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { problemError } from '@shared/problem/index.ts';
import type { Wait } from './aside.ts';
import { asideName, lockName, takeOut } from './leftovers.ts';
import { failureCode, type FileOperations } from './operations.ts';
import type { Processes } from './processes.ts';

/** What it takes to write: the file system, a clock to wait by, and who else is running. */
export interface Disk {
  readonly files: FileOperations;
  readonly wait: Wait;
  readonly processes: Processes;
}

export interface Lock {
  /** False if somebody took it for left behind: this process slept for too long. */
  isHeld(): Promise<boolean>;
  release(): Promise<void>;
}

/**
 * How long the same holder is waited for, in ms. A lock is held while one file
 * is read and another renamed; what takes longer hangs, or is gone with its
 * machine.
 */
const PATIENCE_MS = 10_000;
const FIRST_WAIT_MS = 5;
const LONGEST_WAIT_MS = 100;

/** Like a new file: whoever may write in the folder may also clear up after a process that ended. */
const LOCK_MODE = 0o777;

/** What a rename answers when a folder that is not empty, or on Windows any folder, has the name. */
const TAKEN = new Set(['ENOTEMPTY', 'EEXIST', 'EPERM', 'EACCES', 'EBUSY']);

/** Waits for the lock of the file. Throws `file-busy` if a running process keeps it, and what the platform throws. */
export async function lock(disk: Disk, file: string): Promise<Lock> {
  const { files, processes } = disk;
  const name = processes.begin();
  const place = join(dirname(file), lockName(createHash('sha256').update(basename(file)).digest('hex').slice(0, 16)));
  const aside = join(dirname(file), asideName(name));
  const end = async (folder: string): Promise<void> => {
    processes.end(name);
    await takeOut(files, folder, name);
  };
  try {
    await files.makeFolder(join(aside, name), LOCK_MODE);
    await moveWhenFree(disk, aside, place);
  } catch (error) {
    await end(aside);
    throw error;
  }
  return {
    isHeld: async () => {
      try {
        return (await files.names(place)).includes(name);
      } catch (error) {
        if (failureCode(error) === 'ENOENT') return false;
        throw error;
      }
    },
    release: () => end(place),
  };
}

/** Does the job while this process has the lock of the file. Throws what `lock` and the job throw. */
export async function underLock<T>(disk: Disk, file: string, job: (held: Lock) => Promise<T>): Promise<T> {
  const held = await lock(disk, file);
  try {
    return await job(held);
  } finally {
    await held.release();
  }
}

async function moveWhenFree({ files, wait, processes }: Disk, aside: string, place: string): Promise<void> {
  let seen: string | null = null;
  let waited = 0;
  for (let ms = FIRST_WAIT_MS; ; ms = Math.min(2 * ms, LONGEST_WAIT_MS)) {
    const refusal = await files.rename(aside, place).then(
      () => null,
      (error: unknown) => error,
    );
    if (refusal === null) return;
    if (!TAKEN.has(failureCode(refusal) ?? '')) throw refusal;
    const holder = await holderOf(files, place);
    if (holder !== seen) waited = 0;
    seen = holder;
    const state = holder === null ? null : processes.stateOf(holder);
    const isLeftBehind = state === 'ended' || (state === 'unknown' && waited >= PATIENCE_MS);
    if (holder !== null && isLeftBehind) await takeOut(files, place, holder);
    // An empty one is in the way on Windows alone.
    else if (holder === null) await files.removeFolder(place).catch(() => undefined);
    if (!isLeftBehind && waited >= PATIENCE_MS) throw holder === null ? refusal : problemError('file-busy', {});
    await wait(ms);
    waited += ms;
  }
}

/** Null if nobody holds it, or it cannot be looked into. */
async function holderOf(files: FileOperations, place: string): Promise<string | null> {
  const names = await files.names(place).catch((): readonly string[] => []);
  return names[0] ?? null;
}
