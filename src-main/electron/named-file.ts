/** The file that a command line names. */
import { resolve } from 'node:path';

/**
 * The first argument that is neither the program nor an option, absolute, or
 * null. Unpacked, Electron's own arguments are the binary and our folder.
 */
export function namedFile(given: readonly string[], isPackaged: boolean, folder: string): string | null {
  const named = given.slice(1).filter((text) => !text.startsWith('-'));
  const file = named[isPackaged ? 0 : 1];
  return file === undefined ? null : resolve(folder, file);
}
