/** The services' surroundings as they really are. */
import { homedir } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import type { Environment, Shell } from '../environment.ts';
import { makeExportsInThread } from '../export/in-thread.ts';
import { nodeFiles, type FileOperations, type Wait } from '../files/index.ts';
import { announcePresence } from './presence.ts';
import { programVersion } from '../program-folder.ts';
import { isAbsolute, join } from 'node:path';

export interface MachineOptions {
  readonly dataFolder?: string;
  readonly homeFolder?: string;
  readonly files?: FileOperations;
}

/** This user's data folder on this machine. */
export function ownDataFolder(): string {
  return dataFolder(process.env, process.platform, homedir());
}

/** An environment for `shell`, and `leave` to call when this run ends. */
export async function thisMachine(
  shell: Shell,
  options: MachineOptions = {},
): Promise<{ environment: Environment; leave: () => Promise<void> }> {
  const folder = options.dataFolder ?? ownDataFolder();
  const wait: Wait = (ms) => setTimeout(ms);
  const presence = await announcePresence(folder);
  const environment: Environment = {
    makeExports: makeExportsInThread,
    files: presence.unfinished.watch(options.files ?? nodeFiles),
    now: () => new Date(),
    wait,
    presence,
    shell,
    dataFolder: folder,
    homeFolder: options.homeFolder ?? homedir(),
    version: programVersion(),
  };
  return { environment, leave: () => presence.close() };
}

type Variables = Readonly<Record<string, string | undefined>>;

/**
 * The user's data folder: as the XDG base directory specification has it on
 * Linux, and as the platforms have it on macOS and Windows. `WALEWRIGHT_DATA`
 * overrides all of them.
 */
export function dataFolder(variables: Variables, platform: NodeJS.Platform, homeFolder: string): string {
  const given = variables['WALEWRIGHT_DATA'];
  if (given !== undefined && isAbsolute(given)) return given;
  if (platform === 'darwin') return join(homeFolder, 'Library', 'Application Support', 'Walewright');
  if (platform === 'win32') return join(variables['APPDATA'] ?? join(homeFolder, 'AppData', 'Roaming'), 'Walewright');
  const xdg = variables['XDG_DATA_HOME'];
  // The specification asks that a relative path there be ignored.
  return join(xdg !== undefined && isAbsolute(xdg) ? xdg : join(homeFolder, '.local', 'share'), 'walewright');
}
