/**
 * The key for work that windows keep in their browser's own storage.
 *
 * It stays the same from run to run, in a file that only its user can read:
 * what one host's windows kept, the next one's open.
 */
import { chmod, link, open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { isSecret, newSecret } from '@shared/host/sealed/index.ts';
import { failureCode } from '../services/index.ts';

/** The key, made if there is none yet. */
export async function storageKey(dataFolder: string): Promise<string> {
  const file = join(dataFolder, 'storage-key');
  const found = await readFile(file, 'utf8').catch((error: unknown) => {
    if (failureCode(error) === 'ENOENT') return null;
    throw error;
  });
  if (found !== null && isSecret(found)) {
    await chmod(file, 0o600).catch(() => undefined);
    return found;
  }
  // What cannot be read as a key is put aside and not away: a copy may mend it.
  if (found !== null) await rename(file, `${file}.unreadable`);
  const aside = `${file}.${newSecret(globalThis.crypto).slice(0, 16)}.tmp`;
  const key = newSecret(globalThis.crypto);
  try {
    await writeFlushed(aside, key);
    await linkOrRename(aside, file);
  } catch (error) {
    // Two hosts that start at once: the first one's key is the key.
    if (failureCode(error) !== 'EEXIST') throw error;
    return storageKey(dataFolder);
  } finally {
    await rm(aside, { force: true });
  }
  return key;
}

async function writeFlushed(file: string, text: string): Promise<void> {
  const handle = await open(file, 'wx', 0o600);
  try {
    await handle.writeFile(text);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A link fails where the name is taken, in one step. File systems without links have the rename alone. */
async function linkOrRename(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch (error) {
    if (!['EPERM', 'ENOTSUP', 'ENOSYS', 'EOPNOTSUPP'].includes(failureCode(error) ?? '')) throw error;
    await rename(from, to);
  }
}
