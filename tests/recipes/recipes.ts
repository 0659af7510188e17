/** The recipes of DEVELOPERS.md: each a patch that makes one new thing, and the tests that must see it. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parsePatch, patched, type PatchedFile } from './patch.ts';

export interface Recipe {
  /** Of its patch, and of the test in `appears/` that looks for the new thing. */
  readonly name: string;
  /** Tests that take up the new thing by themselves. */
  readonly takenUpBy: readonly string[];
}

export const RECIPES: readonly Recipe[] = [
  {
    name: 'placement-rule',
    takenUpBy: ['tests/reference/placement-exhaustive.test.ts', 'tests/property/placement.test.ts'],
  },
  { name: 'tool', takenUpBy: ['tests/unit/project/change.test.ts', 'tests/property/edit-commands.test.ts'] },
  { name: 'export', takenUpBy: ['tests/unit/services/exports.test.ts'] },
  { name: 'finding', takenUpBy: ['tests/property/plan.test.ts'] },
  { name: 'field', takenUpBy: ['tests/property/project.test.ts'] },
  { name: 'importer', takenUpBy: [] },
];

/** The files that a recipe touches. */
export function patchOf({ name }: Recipe): PatchedFile[] {
  return parsePatch(readFileSync(join(import.meta.dirname, `${name}.patch`), 'utf8'));
}

/** Applies a patch to the files of a folder. Throws `Error` before anything is written where a piece does not fit. */
export function applyPatch(files: readonly PatchedFile[], folder: string): void {
  const texts = files.map((file): [string, string] => {
    const path = join(folder, file.path);
    return [path, patched(file, existsSync(path) ? readFileSync(path, 'utf8') : null)];
  });
  for (const [path, text] of texts) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
}
