/** Project files as they were written, kept in `tests/fixtures/` for good. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../runner/programs.ts';

const FOLDER = join(root, 'tests', 'fixtures');

/** Their names, in order. */
export function fixtureNames(): string[] {
  return readdirSync(FOLDER)
    .filter((name) => name.endsWith('.walewright'))
    .sort();
}

export function fixtureText(name: string): string {
  return readFileSync(join(FOLDER, name), 'utf8');
}
