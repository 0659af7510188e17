/** A folder that nobody but its user can look into. */
import { chmod, lstat, mkdir } from 'node:fs/promises';
import { problemError } from '@shared/problem/index.ts';

/** Makes it if need be. Throws `folder-not-writable` where something else stands there, or another's folder. */
export async function ownFolder(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  // A link could lead into a folder of somebody who put it there.
  const found = await lstat(folder);
  const isOurs = found.isDirectory() && (process.getuid === undefined || found.uid === process.getuid());
  if (!isOurs) throw problemError('folder-not-writable', { detail: 'it belongs to somebody else' }, folder);
  if ((found.mode & 0o077) !== 0) await chmod(folder, 0o700);
}
