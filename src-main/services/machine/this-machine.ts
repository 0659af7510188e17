/** The services' surroundings as they really are. */
import { homedir } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import type { Environment, Shell } from '../environment.ts';
import { makeExportsInThread } from '../export/in-thread.ts';
import { nodeFiles, type FileOperations, type Wait } from '../files/index.ts';
import { dataFolder } from './data-folder.ts';
import { announcePresence } from './presence.ts';
import { programVersion } from '../program-folder.ts';

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
