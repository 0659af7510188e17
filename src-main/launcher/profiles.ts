/**
 * The browser profiles of the windows that the program opens.
 *
 * A window keeps unsaved work in its browser when its host is gone, and a
 * browser's storage goes with its profile. So a profile goes only if its
 * windows have said that it holds nothing; one that may hold work is taken
 * again by the next start. That is noted in the profile itself, for a run that
 * is killed can say nothing at its end. Whose it is stands in its name, which
 * changes in one step: `PID-UUID`, the process being the launcher's.
 */
import { randomUUID } from 'node:crypto';
import { mkdir, readdir, readlink, rename, rm, stat, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { WindowState } from '../browser-host/index.ts';

/** In a profile that may hold unsaved work. */
const MARK = 'holds-work';

export interface Profile {
  readonly folder: string;
  /** Notes what a window of this profile says of itself. */
  noteState(window: string, state: Pick<WindowState, 'isUnsaved' | 'holdsWork'>): void;
  /** Takes it away, now that its windows are closed, unless it may hold unsaved work. */
  giveBack(): Promise<void>;
}

/** A profile for a window: one that may hold work from an earlier run, else a new one. Others left over go. */
export async function takeProfile(dataFolder: string): Promise<Profile> {
  const all = join(dataFolder, 'windows');
  await mkdir(all, { recursive: true, mode: 0o700 });
  const folder = join(all, `${process.pid}-${randomUUID()}`);
  if (!(await takeOver(all, folder))) await mkdir(folder, { mode: 0o700 });

  const holding = new Set<string>();
  let noting = Promise.resolve();
  return {
    folder,
    noteState(window, { isUnsaved, holdsWork = false }) {
      if (isUnsaved || holdsWork) holding.add(window);
      else holding.delete(window);
      const mark = join(folder, MARK);
      const isHolding = holding.size > 0;
      noting = noting.then(() => (isHolding ? writeFile(mark, '') : rm(mark, { force: true }))).catch(() => undefined);
    },
    async giveBack() {
      await noting;
      if (await mayGo(folder)) await remove(folder);
    },
  };
}

/** True if nothing says that the profile holds unsaved work. */
export function mayGo(folder: string): Promise<boolean> {
  return stat(join(folder, MARK)).then(
    () => false,
    () => true,
  );
}

/** Moves the profile that was marked last to `folder`, and takes away what holds nothing. True if there was one. */
async function takeOver(all: string, folder: string): Promise<boolean> {
  const marked: { place: string; at: number }[] = [];
  for (const name of await readdir(all)) {
    const place = join(all, name);
    if (await isInUse(all, name)) continue;
    const mark = await stat(join(place, MARK)).catch(() => null);
    if (mark !== null) marked.push({ place, at: mark.mtimeMs });
    else await removeAside(place, join(all, `${process.pid}-${randomUUID()}`));
  }
  for (const { place } of marked.sort((one, other) => other.at - one.at)) {
    if (!(await moved(place, folder))) continue;
    // Who had the port while no host did could have left one there, and it would stand between window and host.
    await rm(join(folder, 'Default', 'Service Worker'), { recursive: true, force: true }).catch(() => undefined);
    return true;
  }
  return false;
}

/** One step, so that of two starts one alone has it; fails on Windows while a browser has files open in it. */
function moved(from: string, to: string): Promise<boolean> {
  return rename(from, to).then(
    () => true,
    () => false,
  );
}

/** Another start that takes this one over finds it whole or not at all. */
async function removeAside(folder: string, aside: string): Promise<void> {
  if (await moved(folder, aside)) await remove(aside);
}

/** By a launcher that runs, or by a window that has outlived its own. */
async function isInUse(all: string, name: string): Promise<boolean> {
  const owner = /^(\d+)-/.exec(name)?.[1];
  if (owner !== undefined && isRunning(Number(owner))) return true;
  // Chromium's own lock, away from Windows: a link to HOST-PID that leads nowhere.
  const lock = await readlink(join(all, name, 'SingletonLock')).catch(() => '');
  const [, host, pid] = /^(.*)-(\d+)$/.exec(lock) ?? [];
  return pid !== undefined && (host !== hostname() || isRunning(Number(pid)));
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

async function remove(folder: string): Promise<void> {
  // Chromium's helpers may write for a moment longer.
  await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }).catch(() => undefined);
}
