/** Electron as npm brings it: the package is there at once, its binary only when its installer has fetched it. */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

export interface ElectronPackage {
  readonly folder: string;
  readonly version: string;
}

/**
 * The installed package, or null. Nothing of it is loaded: that would start a
 * download where the binary is missing.
 */
export function electronPackage(): ElectronPackage | null {
  try {
    const description = createRequire(import.meta.url).resolve('electron/package.json');
    const { version } = JSON.parse(readFileSync(description, 'utf8')) as { version: string };
    return { folder: dirname(description), version };
  } catch {
    return null;
  }
}

/** The binary, or null if it has not been fetched. */
export function electronBinary({ folder }: ElectronPackage): string | null {
  const note = join(folder, 'path.txt');
  if (!existsSync(note)) return null;
  const binary = join(folder, 'dist', readFileSync(note, 'utf8').trim());
  return existsSync(binary) ? binary : null;
}
