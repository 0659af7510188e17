/** The sources as they stand, and a copy of the whole tree to make faults in. */
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sourceTree } from '../architecture/imports.ts';
import { root } from '../runner/programs.ts';
import type { Sources } from './find.ts';

/** The sources of the core. */
export function coreSources(): Sources {
  const { files, read } = sourceTree(root, ['src-shared']);
  return new Map(files.map((file) => [file, read(file)]));
}

/**
 * A copy of all files of the project, whether in its history yet or not, in a
 * new temporary folder, with the same packages. The caller takes it away.
 */
export function copyOfTree(): string {
  const listed = execFileSync(
    'git',
    ['ls-files', '-z', '--cached', '--others', '--exclude-standard', '--deduplicate'],
    {
      cwd: root,
      encoding: 'utf8',
    },
  );
  const copy = mkdtempSync(join(tmpdir(), 'walewright-mutants-'));
  // What was deleted is listed until that is committed.
  for (const file of listed.split('\0').filter((name) => name !== '' && existsSync(join(root, name)))) {
    cpSync(join(root, file), join(copy, file));
  }
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'), 'junction');
  return copy;
}
