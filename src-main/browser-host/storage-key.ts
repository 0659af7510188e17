/**
 * The key for work that windows keep in their browser's own storage.
 *
 * It stays the same from run to run, in a file that only its user can read:
 * what one host's windows kept, the next one's open.
 */
import { chmod, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isSecret, newSecret } from '@shared/host/sealed/index.ts';
import { failureCode, underLock, writeAside, processesHere, type Environment } from '../services/index.ts';

/** The key, made if there is none yet. The data folder is there. */
export async function storageKey({
  files,
  wait,
  dataFolder,
}: Pick<Environment, 'files' | 'wait' | 'dataFolder'>): Promise<string> {
  const file = join(dataFolder, 'storage-key');
  return (
    (await keyIn(file)) ??
    // Of hosts that start at once the first one makes it.
    underLock({ files, wait, processes: processesHere }, file, async () => (await keyIn(file)) ?? make())
  );

  async function make(): Promise<string> {
    // What cannot be read as a key is put aside and not away: a copy may mend it.
    await files.rename(file, `${file}.unreadable`).catch(unlessMissing);
    const key = newSecret(globalThis.crypto);
    const writer = processesHere.begin();
    try {
      const aside = await writeAside(files, file, writer, new TextEncoder().encode(key), 0o600);
      await files.rename(aside, file);
    } finally {
      processesHere.end(writer);
    }
    return key;
  }
}

/** The key in the file, or null where there is none, or something else. */
async function keyIn(file: string): Promise<string | null> {
  const found = await readFile(file, 'utf8').catch(unlessMissing);
  if (found === null || !isSecret(found)) return null;
  await chmod(file, 0o600).catch(() => undefined);
  return found;
}

function unlessMissing(error: unknown): null {
  if (failureCode(error) === 'ENOENT') return null;
  throw error;
}
