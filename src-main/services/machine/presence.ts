/**
 * Which runs of the program are going on.
 *
 * A process number says little: after a power cut the next start may give it
 * to something else, and kept work would never be offered again. So each run
 * holds a lock (`held-lock.ts`) and leaves a note that says where. The note is
 * written once the lock is held, so a note whose lock is free is that of a run
 * that has ended, however it ended. What such a run left is taken away by the
 * next start: the note last, so that a clearing that is cut short is done again.
 */
import { randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Presence } from '../environment.ts';
import { failureCode } from '../files/index.ts';
import { clearLock, holdLock, isHeld } from './held-lock.ts';
import { clearUnfinished, noteUnfinished, type Unfinished } from './unfinished.ts';

export interface OwnPresence extends Presence {
  /** What this run writes aside. */
  readonly unfinished: Unfinished;
  /** Ends the presence; the run must keep no more work after that. */
  close(): Promise<void>;
}

/** Files that may stand beside a run's note. */
const STARTING = '.starting';
const WRITING = '.writing';
const LOCK = '.lock';

/** What has no note yet may be a run that just starts, for this long. */
const STARTING_MS = 60_000;

/** Announces a run and takes away what dead ones left. Rejects if no lock can be had or the folder cannot be written. */
export async function announcePresence(dataFolder: string): Promise<OwnPresence> {
  const instance = randomBytes(8).toString('hex');
  const folder = join(dataFolder, 'running');
  const placeOf = (name: string, what = ''): string => join(folder, name + what);

  await mkdir(folder, { recursive: true, mode: 0o700 });
  const lock = await holdLock(folder, instance);
  const unfinished = await noteUnfinished(placeOf(instance, WRITING));
  await writeFile(placeOf(instance, STARTING), lock.address, { mode: 0o600 });
  await rename(placeOf(instance, STARTING), placeOf(instance));
  await clearDead();

  /** Where a run has its lock; null if it left no note. */
  async function lockOf(name: string): Promise<string | null> {
    return readFile(placeOf(name), 'utf8').catch((error: unknown) => {
      if (failureCode(error) === 'ENOENT') return null;
      throw error;
    });
  }

  async function isRunning(name: string): Promise<boolean> {
    try {
      const address = await lockOf(name);
      return address !== null && (await isHeld(address));
    } catch {
      // A note that is there but cannot be read now: only what is surely dead counts as dead.
      return true;
    }
  }

  async function clearDead(): Promise<void> {
    const names = await readdir(folder);
    const noted = new Set(names.filter((name) => !name.includes('.')));
    for (const name of noted) {
      if (await isRunning(name)) continue;
      await clear(name).catch(() => undefined);
    }
    for (const name of names) {
      const [owner = ''] = name.split('.');
      if (noted.has(owner) || owner === instance || !(await isLeftOver(name))) continue;
      await rm(join(folder, name), { force: true }).catch(() => undefined);
    }
  }

  async function clear(name: string): Promise<void> {
    await clearUnfinished(placeOf(name, WRITING));
    await clearLock(folder, name, (await lockOf(name)) ?? '');
    await rm(placeOf(name, STARTING), { force: true });
    await rm(placeOf(name), { force: true });
  }

  /** True for what a run left that was killed before it had written its note. */
  async function isLeftOver(file: string): Promise<boolean> {
    if (![STARTING, WRITING, LOCK].some((what) => file.endsWith(what))) return false;
    const { mtimeMs } = await stat(join(folder, file)).catch(() => ({ mtimeMs: Infinity }));
    if (Date.now() - mtimeMs < STARTING_MS) return false;
    return !file.endsWith(LOCK) || !(await isHeld(join(folder, file)));
  }

  return {
    instance,
    unfinished,
    isRunning,
    async close() {
      await unfinished.close();
      await lock.release();
      await rm(placeOf(instance), { force: true });
    },
  };
}
