/** What an installed program brings of other people's modules, by the patterns that it is packed with. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FONT_FILES } from '../../../src-main/services/export/fonts.ts';

const root = join(import.meta.dirname, '..', '..', '..');
// The very matcher of the packer, with its options.
const packer = createRequire(createRequire(import.meta.url).resolve('electron-builder'));
const { minimatch } = createRequire(packer.resolve('app-builder-lib'))('minimatch') as {
  minimatch(path: string, pattern: string, options: { dot: boolean }): boolean;
};

interface Lock {
  readonly packages: { readonly [path: string]: { readonly dev?: boolean; readonly devOptional?: boolean } };
}
interface Package {
  readonly build: { readonly files: readonly string[] };
}

function read<T>(name: string): T {
  return JSON.parse(readFileSync(join(root, name), 'utf8')) as T;
}

const left = read<Package>('package.json')
  .build.files.filter((pattern) => pattern.startsWith('!node_modules/'))
  .map((pattern) => pattern.slice(1));
const isLeft = (path: string): boolean => left.some((pattern) => minimatch(path, pattern, { dot: true }));

/** Files of all modules that are not for development alone, as far as they are installed on this platform. */
function shippedFiles(): string[] {
  return Object.entries(read<Lock>('package-lock.json').packages).flatMap(([folder, { dev, devOptional }]) => {
    if (folder === '' || dev || devOptional) return [];
    const entries = readdirIfThere(join(root, folder));
    return entries.filter((path) => !isLeft(path));
  });
}

function readdirIfThere(folder: string): string[] {
  try {
    return readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => relative(root, join(entry.parentPath, entry.name)));
  } catch {
    // A part for another platform.
    return [];
  }
}

describe('modules of an installed program', () => {
  const files = new Set(shippedFiles());

  it('take at most 30 MB', () => {
    const bytes = [...files].reduce((sum, path) => sum + statSync(join(root, path)).size, 0);
    expect(bytes).toBeGreaterThan(1_000_000);
    expect(bytes).toBeLessThanOrEqual(30_000_000);
  });

  it('have the two fonts of the sheet, and no other style of them', () => {
    const fonts = [...files].filter((path) => path.endsWith('.ttf'));
    expect(fonts.sort()).toEqual(Object.values(FONT_FILES).map((path) => relative(root, path)));
  });

  it.each(['pdfkit', 'fontkit', '@resvg/resvg-js'])('have what Node loads of %s', (name) => {
    const loaded = createRequire(join(root, 'package.json')).resolve(name);
    expect(files).toContain(relative(root, loaded));
  });
});
