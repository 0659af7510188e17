/** A note in the data folder that a version of Electron could not be fetched. */
import { mkdir, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Surroundings } from './choose-shell.ts';

export function failureNotes(dataFolder: string): Surroundings['failure'] {
  const placeOf = (version: string): string => join(dataFolder, `electron-${version}-not-fetched`);
  return {
    noted: (version) =>
      stat(placeOf(version)).then(
        () => placeOf(version),
        () => null,
      ),
    async note(version) {
      // Where it cannot be noted the next start tries again, which harms nobody.
      await mkdir(dataFolder, { recursive: true, mode: 0o700 }).catch(() => undefined);
      await writeFile(placeOf(version), '').catch(() => undefined);
    },
  };
}
