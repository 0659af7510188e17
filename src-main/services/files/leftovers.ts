/**
 * What a process that was ended in the middle of writing leaves in a folder:
 * bytes written aside, and locks. The names say whose they are, so that they
 * can be cleared away once that process has ended, and not before.
 */
import { join } from 'node:path';
import type { FileOperations } from './operations.ts';
import type { Processes } from './processes.ts';

const ASIDE = /^\.walewright-(.+)\.tmp$/;
const LOCK = /^\.walewright-[0-9a-f]{16}\.lock$/;

/** A name beside the document for what is not it yet. `writer` is the name of the work, from {@link Processes}. */
export function asideName(writer: string): string {
  return `.walewright-${writer}.tmp`;
}

export function lockName(hash: string): string {
  return `.walewright-${hash}.lock`;
}

/** Removes what ended processes left in the folder. Never rejects: it is a courtesy. */
export async function clearLeftovers(files: FileOperations, processes: Processes, folder: string): Promise<void> {
  const names = await files.names(folder).catch((): readonly string[] => []);
  for (const name of names) {
    const path = join(folder, name);
    const writer = ASIDE.exec(name)?.[1];
    if (writer !== undefined && processes.stateOf(writer) === 'ended') await removeAside(files, path, writer);
    if (LOCK.test(name)) await clearLock(files, processes, path);
  }
}

/** Bytes, or the folder of a lock that was not in its place yet. */
async function removeAside(files: FileOperations, path: string, writer: string): Promise<void> {
  const isFile = await files.unlink(path).then(
    () => true,
    () => false,
  );
  if (!isFile) await takeOut(files, path, writer);
}

async function clearLock(files: FileOperations, processes: Processes, path: string): Promise<void> {
  const [holder] = await files.names(path).catch((): readonly string[] => []);
  if (holder === undefined) await files.removeFolder(path).catch(() => undefined);
  else if (processes.stateOf(holder) === 'ended') await takeOut(files, path, holder);
}

/** Removes a lock if `holder` has it, and nobody else's. What cannot be removed is left to be cleared later. */
export async function takeOut(files: FileOperations, place: string, holder: string): Promise<void> {
  await files.removeFolder(join(place, holder)).catch(() => undefined);
  await files.removeFolder(place).catch(() => undefined);
}
