/** What a folder holds, for a file panel of our own. */
import { basename, dirname, join, resolve } from 'node:path';
import { problemError } from '@shared/problem/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import { comparedInOrder } from './people-order.ts';
import type { Environment } from './environment.ts';
import { kindByName } from './file-kinds.ts';
import { readingProblem } from './files/index.ts';
import type { Reach } from './reach.ts';

type Entry = Result<'folders.list'>['entries'][number];

/**
 * Lists folders first, each kind by name as people sort. Only folders that are
 * not hidden, and files that the program opens or writes by their names.
 */
export async function listFolder(
  { files, homeFolder }: Environment,
  reach: Reach,
  params: Params<'folders.list'>,
): Promise<Result<'folders.list'>> {
  const folder = resolve(homeFolder, params.folder ?? '.');
  await reach.assertFolder(folder);
  let names: readonly string[];
  try {
    names = await files.names(folder);
  } catch (error) {
    throw readingProblem(error, folder);
  }
  const shown = names.filter((name) => !name.startsWith('.'));
  const entries = (await Promise.all(shown.map(entryOf))).filter((entry) => entry !== null);
  const parent = dirname(folder);
  return { folder, parent: parent === folder ? null : parent, entries: entries.sort(byKindAndName) };

  /** Null for a link that leads nowhere, or a file that has gone since. */
  async function entryOf(name: string): Promise<Entry | null> {
    const state = await files.state(join(folder, name)).catch(() => null);
    if (state === null || state.kind === 'other') return null;
    const kind = state.kind === 'folder' ? 'folder' : kindByName(name);
    return kind && { name, kind };
  }
}

function byKindAndName(a: Entry, b: Entry): number {
  if ((a.kind === 'folder') !== (b.kind === 'folder')) return a.kind === 'folder' ? -1 : 1;
  return comparedInOrder(a.name, b.name) || (a.name < b.name ? -1 : 1);
}

/** The folder, absolute. Throws `file-missing` or `folder-not-writable` if it is none. */
export async function existingFolder({ files, homeFolder }: Environment, path: string): Promise<string> {
  const folder = resolve(homeFolder, path);
  const state = await files.state(folder).catch((error: unknown) => {
    throw readingProblem(error, folder);
  });
  if (state.kind !== 'folder') {
    throw problemError('folder-not-writable', { detail: `${basename(folder)} is not a folder` }, folder);
  }
  return folder;
}
