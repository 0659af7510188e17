/**
 * What a person set for the program on this machine.
 *
 * Settings that cannot be read are those of the start: they must never stand
 * in the way of a document.
 */
import { join } from 'node:path';
import { contract, NO_LAST_FOLDERS, START_AIDS, type Result } from '@shared/host/index.ts';
import { outcome } from '@shared/problem/index.ts';
import type { Environment } from './environment.ts';
import { readWhole, writeWhole } from './files/index.ts';
import { inTurn } from './in-turn.ts';

const START: Result<'settings.read'> = {
  singleKeys: true,
  machine: null,
  collection: null,
  window: null,
  lastFolders: NO_LAST_FOLDERS,
  aids: START_AIDS,
};
const schema = contract['settings.read'].result;

export interface Settings {
  read(): Promise<Result<'settings.read'>>;
  /** What is left out stays as it is. */
  keep(set: Partial<Result<'settings.read'>>): Promise<void>;
}

export function settingsOf({ files, wait, dataFolder }: Pick<Environment, 'files' | 'wait' | 'dataFolder'>): Settings {
  const place = join(dataFolder, 'settings.json');
  const turn = inTurn();
  async function read(): Promise<Result<'settings.read'>> {
    const bytes = await readWhole(files, place).catch(() => null);
    if (bytes === null) return START;
    const parsed = outcome(() => schema.parse(JSON.parse(new TextDecoder().decode(bytes))));
    return parsed.ok ? parsed.value : START;
  }
  return {
    read,
    keep: (set) =>
      turn(place, async () => {
        await files.makeFolder(dataFolder);
        const settings = { ...(await read()), ...set };
        await writeWhole(files, wait, place, new TextEncoder().encode(`${JSON.stringify(settings, null, 2)}\n`));
      }),
  };
}
