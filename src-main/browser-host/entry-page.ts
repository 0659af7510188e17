/**
 * Pages that let a browser in, as files.
 *
 * What a browser is started with can be read by every user of the machine: a
 * path may stand there, a key may not. So the key lies in a file that only its
 * user can read, and that goes to the address with the key behind `#`, the
 * part of an address that no browser sends anywhere.
 */
import { randomUUID } from 'node:crypto';
import { readdir, rm, stat, writeFile, chmod, lstat, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { problemError } from '@shared/problem/index.ts';

/** How long the page is there for a browser that is slow to start. */
export const ENTRY_PAGE_MS = 60_000;

const folderIn = (dataFolder: string): string => join(dataFolder, 'enter');

export interface EntryPage {
  readonly file: string;
  remove(): Promise<void>;
}

export async function writeEntryPage(dataFolder: string, address: string): Promise<EntryPage> {
  const folder = folderIn(dataFolder);
  await ownFolder(folder);
  const file = join(folder, `${randomUUID()}.html`);
  await writeFile(file, pageTo(address), { flag: 'wx', mode: 0o600 });
  return { file, remove: () => rm(file, { force: true }) };
}

/** Takes away what runs that were killed have left; their keys open nothing any more. */
export async function removeOldEntryPages(dataFolder: string, now: number): Promise<void> {
  const folder = folderIn(dataFolder);
  for (const name of await readdir(folder).catch(() => [])) {
    const file = join(folder, name);
    const madeAt = await stat(file).then(
      ({ mtimeMs }) => mtimeMs,
      () => now,
    );
    if (now - madeAt > ENTRY_PAGE_MS) await rm(file, { force: true }).catch(() => undefined);
  }
}

function pageTo(address: string): string {
  return [
    '<!doctype html>',
    '<meta charset="utf-8">',
    '<meta name="referrer" content="no-referrer">',
    '<title>Walewright</title>',
    `<script>location.replace(${JSON.stringify(address)});</script>`,
    '',
  ].join('\n');
}

/** Makes it if need be. Throws `folder-not-writable` where something else stands there, or another's folder. */
async function ownFolder(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  // A link could lead into a folder of somebody who put it there.
  const found = await lstat(folder);
  const isOurs = found.isDirectory() && (process.getuid === undefined || found.uid === process.getuid());
  if (!isOurs) throw problemError('folder-not-writable', { detail: 'it belongs to somebody else' }, folder);
  if ((found.mode & 0o077) !== 0) await chmod(folder, 0o700);
}
