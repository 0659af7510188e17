/**
 * The folder of the collection: one beside the settings, or one that the person
 * chose. Its files are named by their names alone, and none is reached that
 * lies outside it.
 */
import { basename, dirname, join, resolve } from 'node:path';
import { isCollectedName, MOST_COLLECTED, MOST_COLLECTED_BYTES, type Result } from '@shared/host/index.ts';
import { problemError, ProblemError, problemOf } from '@shared/problem/index.ts';
import { comparedInOrder } from '../people-order.ts';
import type { Environment } from '../environment.ts';
import { PROJECT_ENDING } from '../file-kinds.ts';
import { behindLinks, failureCode, readingProblem, readWhole } from '../files/index.ts';
import { existingFolder } from '../folders.ts';
import type { Reach } from '../reach.ts';
import type { Settings } from '../settings.ts';
import { ownCollection } from './own-folder.ts';

export interface CollectionFolder {
  readonly folder: string;
  readonly isOwn: boolean;
}

/** The folder that the settings name. */
export async function folderNow(
  { dataFolder }: Pick<Environment, 'dataFolder'>,
  settings: Settings,
): Promise<CollectionFolder> {
  const { collection } = await settings.read();
  return { folder: collection ?? ownCollection(dataFolder), isOwn: collection === null };
}

/** Another folder from now on; null: the program's own. Throws `path-closed`, `file-missing` or `folder-not-writable`. */
export async function chooseFolder(
  environment: Environment,
  settings: Settings,
  reach: Reach,
  wanted: string | null,
): Promise<void> {
  if (wanted === null) return settings.keep({ collection: null });
  const folder = await existingFolder(environment, resolve(environment.homeFolder, wanted));
  await reach.assertFolder(folder);
  return settings.keep({ collection: folder });
}

/** By the name before the ending: `star` comes before `star 2`. */
function asPeopleSort(one: string, other: string): number {
  const stem = (name: string): string => name.slice(0, -PROJECT_ENDING.length);
  return comparedInOrder(stem(one), stem(other)) || (one < other ? -1 : 1);
}

/** The names of its files, as people sort. Throws what reading a folder throws, but for one of the program's own that is not there yet. */
export async function listFiles(
  { files }: Pick<Environment, 'files'>,
  { folder, isOwn }: CollectionFolder,
): Promise<Result<'collection.list'>> {
  let names: readonly string[];
  try {
    names = await files.names(folder);
  } catch (error) {
    if (!isOwn || failureCode(error) !== 'ENOENT') throw readingProblem(error, folder);
    names = [];
  }
  const ours = names.filter(isCollectedName).sort(asPeopleSort);
  return { folder, isOwn, files: ours.slice(0, MOST_COLLECTED), left: Math.max(0, ours.length - MOST_COLLECTED) };
}

/** The bytes of a file of the folder. Problems name the file by its name; `path-closed` for what a link leads out of the folder. */
export async function readFileIn(
  { files }: Pick<Environment, 'files'>,
  folder: string,
  file: string,
): Promise<Uint8Array> {
  try {
    const path = await pathInside(files, folder, file);
    return await readWhole(files, path, MOST_COLLECTED_BYTES);
  } catch (error) {
    throw new ProblemError({ ...problemOf(readingProblem(error, file)), where: file });
  }
}

/** Where a file of the folder stands, which need not be there yet. Throws `path-closed`, and what the platform does. */
export async function pathInside(files: Environment['files'], folder: string, file: string): Promise<string> {
  if (basename(file) !== file) throw problemError('path-closed', { why: 'outside' }, file);
  const path = join(folder, file);
  const target = await behindLinks(files, path);
  const [real, home] = await Promise.all([files.realPath(dirname(target)), files.realPath(folder)]);
  if (real !== home) throw problemError('path-closed', { why: 'outside' }, file);
  return path;
}
