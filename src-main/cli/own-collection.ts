/** The collection of motifs as the command line has it: that of the program on this machine, or of a folder that is named. */
import { join, resolve } from 'node:path';
import { isSameName } from '@shared/collection/index.ts';
import type { Params } from '@shared/host/index.ts';
import { problemError, ProblemError, problemOf } from '@shared/problem/index.ts';
import {
  Entries,
  folderNow,
  keepMotif,
  listFiles,
  type CollectionFolder,
  type Entry,
} from '../services/collection/index.ts';
import { PROJECT_ENDING } from '../services/file-kinds.ts';
import { nodeFiles } from '../services/files/index.ts';
import { ownDataFolder } from '../services/machine/this-machine.ts';
import { settingsOf } from '../services/settings.ts';
import { wait } from './replacing.ts';

/** What stands before the name of a motif of the collection where a file is named. */
export const COLLECTED = 'collection:';

const environment = { files: nodeFiles, wait };

export type Collected = Extract<Entry, { readonly kind: 'motif' }>;

export interface OwnCollection {
  readonly where: CollectionFolder;
  /** Motifs, and files that are none, in the order of their files. */
  readonly entries: readonly Entry[];
}

/** All that is in the folder named, or in that of the program. Throws what reading the folder throws. */
export async function ownCollection(folder?: string): Promise<OwnCollection> {
  const where = await whereIs(folder);
  const looking = new Entries(environment);
  const entries: Entry[] = [];
  for (const file of (await listFiles(environment, where)).files) entries.push(await looking.look(where.folder, file));
  return { where, entries };
}

/** Keeps the motif of a project that holds one, and says where. */
export async function keepInOwn(
  text: string,
  folder: string | undefined,
  there: Params<'collection.keep'>['there'],
): ReturnType<typeof keepMotif> {
  return keepMotif(environment, new Entries(environment), await whereIs(folder), { text, there });
}

/**
 * The file that is meant: a path as it is, and of `collection:NAME` the file of
 * the motif that is called so, or that has this name itself. Throws
 * `file-missing` or `collected-several`, naming what was given.
 */
export async function namedFile(given: string): Promise<string> {
  if (!given.startsWith(COLLECTED)) return given;
  const name = given.slice(COLLECTED.length).trim();
  try {
    const { where, entries } = await ownCollection();
    const isFile = ({ file }: Entry): boolean => file === name || file === name + PROJECT_ENDING;
    const called = motifsCalled(entries, name);
    const [only, another] = name.endsWith(PROJECT_ENDING) || called.length === 0 ? entries.filter(isFile) : called;
    if (!only) throw problemError('file-missing', {});
    if (another) throw problemError('collected-several', { files: called.map(({ file }) => file) });
    return join(where.folder, only.file);
  } catch (error) {
    throw new ProblemError({ ...problemOf(error), where: given });
  }
}

export function motifsCalled(entries: readonly Entry[], name: string): readonly Collected[] {
  return entries.filter((entry) => entry.kind === 'motif').filter((motif) => isSameName(motif.name, name));
}

async function whereIs(folder: string | undefined): Promise<CollectionFolder> {
  if (folder !== undefined) return { folder: resolve(folder), isOwn: false };
  const own = { ...environment, dataFolder: ownDataFolder() };
  return folderNow(own, settingsOf(own));
}
