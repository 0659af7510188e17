/**
 * The browser profiles of the windows that the program opens.
 *
 * A window keeps unsaved work in its browser when its host is gone, and a
 * browser's storage goes with its profile. What it keeps then nobody hears of:
 * so a profile is marked from the moment a window may open in it, and goes only
 * if that window was closed while its host was there, and had said that nothing
 * is left. One that is marked is taken again by the next start. Storage belongs
 * to an address, so the mark names those at which there may be some: a window
 * on another cannot speak for them. Whose it is stands in its name, which
 * changes in one step: `PID-UUID`, the process being the launcher's.
 */
import { randomUUID } from 'node:crypto';
import { mkdir, readdir, readFile, readlink, rename, rm, stat, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { WindowState } from '../browser-host/index.ts';

/** In a profile that may hold unsaved work: at which addresses, a line each. */
const MARK = 'holds-work';

export interface Profile {
  readonly folder: string;
  /** Marks it: a window may open in it, on `origin`, now. */
  opens(origin: string): Promise<void>;
  /** No window stays open in it: whatever windows say now, they are in other browsers. */
  failed(): void;
  /** Notes what a window says of itself. */
  noteState(window: string, state: Pick<WindowState, 'isUnsaved' | 'holdsWork'>): void;
  /** Takes it away, now that its windows are closed and their host is still there, unless it may hold unsaved work. */
  giveBack(): Promise<void>;
}

/** A profile for a window: one that may hold work from an earlier run, else a new one. Others left over go. */
export async function takeProfile(dataFolder: string): Promise<Profile> {
  const all = join(dataFolder, 'windows');
  await mkdir(all, { recursive: true, mode: 0o700 });
  const folder = join(all, `${process.pid}-${randomUUID()}`);
  if (!(await takeOver(all, folder))) await mkdir(folder, { mode: 0o700 });

  const mark = join(folder, MARK);
  const before = await readFile(mark, 'utf8').catch(() => '');
  const origins = new Set(before.split('\n').filter((line) => line !== ''));
  const windows = new Set<string>();
  const holding = new Set<string>();
  let here: string | null = null;
  return {
    folder,
    async opens(origin) {
      here = origin;
      await writeFile(mark, [...origins, origin].join('\n'));
    },
    failed: () => void (here = null),
    noteState(window, { isUnsaved, holdsWork = false }) {
      windows.add(window);
      if (isUnsaved || holdsWork) holding.add(window);
      else holding.delete(window);
    },
    async giveBack() {
      if (holding.size > 0) return;
      // Where nobody looked, what was left by an earlier run may be there still.
      if (here !== null && windows.size > 0) origins.delete(here);
      if (origins.size === 0) await remove(folder);
      else await writeFile(mark, [...origins].join('\n'));
    },
  };
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
