/**
 * Which paths the services reach for whoever calls them.
 *
 * The page asks for paths, and so does anybody who came by its key. In a
 * browser, where the page has a file panel of its own, whatever is not hidden
 * can be asked for; what files hold is looked at besides (`file-kinds.ts`).
 * Where the platform's dialogs choose, only what they chose is reached, what
 * the person named when starting the program, and what was opened or saved
 * before.
 */
import { basename, dirname, isAbsolute, join, relative, sep } from 'node:path';
import type { ClosedPath } from '@shared/host/index.ts';
import { problemError } from '@shared/problem/index.ts';
import type { Environment } from './environment.ts';
import { ownCollection } from './collection/own-folder.ts';
import { isProjectName, writtenEnding } from './file-kinds.ts';
import { behindLinks } from './files/index.ts';
import type { Recent } from './recent.ts';

export interface Reach {
  /** Each throws `path-closed`, naming the path as it was given. */
  assertReadable(path: string): Promise<void>;
  assertWritable(path: string): Promise<void>;
  /** To be listed, or written into. */
  assertFolder(folder: string): Promise<void>;
  /** The person chose this file in a dialog. */
  grantFile(path: string): void;
  grantFolder(folder: string): void;
}

export function reachOf(environment: Environment, recent: Recent, platform = process.platform): Reach {
  const { files, homeFolder, dataFolder, shell } = environment;
  const isConfined = shell.dialogs !== null;
  const grantedFiles = new Set<string>();
  const grantedFolders = new Set<string>();

  async function isGranted(path: string): Promise<boolean> {
    return grantedFiles.has(path) || shell.isNamed(path) || (await recent.paths()).includes(path);
  }

  /** The path behind all links; it need not exist. Null where that cannot be told: nothing can be done there either. */
  async function real(path: string): Promise<string | null> {
    try {
      const target = await behindLinks(files, path);
      return join(await files.realPath(dirname(target)), basename(target));
    } catch {
      return null;
    }
  }

  const realOr = async (path: string): Promise<string> => (await real(path)) ?? path;

  /** Looked at as written and behind its links. `isChosen`: the person pointed at it, so it may be hidden. */
  async function assertOpen(path: string, isChosen: boolean): Promise<void> {
    const close = (why: ClosedPath): never => {
      throw problemError('path-closed', { why }, path);
    };
    if (isConfined && !isChosen) close('not-chosen');
    if (!isChosen && isHidden(path, homeFolder, platform)) close('hidden');
    const target = await realOr(path);
    if (!isChosen && isHidden(target, await realOr(homeFolder), platform)) close('hidden');
    const data = await realOr(dataFolder);
    if ([path, target].some((each) => isOwnData(each, dataFolder) || isOwnData(each, data))) close('own-data');
  }

  return {
    assertReadable: async (path) => assertOpen(path, await isGranted(path)),
    async assertWritable(path) {
      writtenEnding(path);
      const isChosen = (await isGranted(path)) || grantedFolders.has(dirname(path));
      await assertOpen(path, isChosen);
      // What the name promises must hold behind its links too.
      writtenEnding(await realOr(path));
    },
    assertFolder: (folder) => assertOpen(folder, grantedFolders.has(folder)),
    grantFile: (path) => void grantedFiles.add(path),
    grantFolder: (folder) => void grantedFolders.add(folder),
  };
}

/** Folders of the home folder that the platforms hide without a dot, and what people keep there all the same (from memory). */
const HIDDEN_AT_HOME: Partial<Record<NodeJS.Platform, { readonly hidden: string; readonly shown: readonly string[] }>> =
  {
    darwin: { hidden: 'Library', shown: ['Mobile Documents', 'CloudStorage'] },
    win32: { hidden: 'AppData', shown: [] },
  };

/** By the name of any part; where the home folder itself stands says nothing of what is in it. */
function isHidden(path: string, home: string, platform: NodeJS.Platform): boolean {
  const atHome = isWithin(path, home);
  const parts = (atHome ? relative(home, path) : path).split(sep);
  if (parts.some((part) => part.startsWith('.'))) return true;
  const rule = HIDDEN_AT_HOME[platform];
  const [first = '', second = ''] = parts;
  // Both platforms take a name in whatever letters it is written.
  const isNamed = (name: string, part: string): boolean => name.toLowerCase() === part.toLowerCase();
  return (
    atHome && rule !== undefined && isNamed(rule.hidden, first) && !rule.shown.some((name) => isNamed(name, second))
  );
}

/** Motifs that a person keeps are theirs, and open as any project does. */
function isOwnData(path: string, dataFolder: string): boolean {
  if (!isWithin(path, dataFolder)) return false;
  return !(isProjectName(path) && dirname(path) === ownCollection(dataFolder));
}

function isWithin(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way));
}
