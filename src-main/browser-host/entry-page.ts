/**
 * Pages that let a browser in, as files.
 *
 * What a browser is started with can be read by every user of the machine: a
 * path may stand there, a key may not. So the key lies in a file that only its
 * user can read, and that goes to the address with the key behind `#`, the
 * part of an address that no browser sends anywhere.
 */
import { randomUUID } from 'node:crypto';
import { readdir, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { ownFolder } from './own-folder.ts';

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
