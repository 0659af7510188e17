/** What became of each mutant when they were last made, in `record.json`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** The test file that saw it, or null where none did. */
export type Outcome = string | null;

const PATH = join(import.meta.dirname, 'record.json');

export function readRecord(): Map<string, Outcome> {
  return new Map(Object.entries(JSON.parse(readFileSync(PATH, 'utf8')) as Record<string, Outcome>));
}

/** Writes what is known of the mutants called `names`, in their order. */
export function writeRecord(names: readonly string[], outcomes: ReadonlyMap<string, Outcome>): void {
  const known = names.filter((name) => outcomes.has(name)).map((name) => [name, outcomes.get(name)]);
  writeFileSync(PATH, `${JSON.stringify(Object.fromEntries(known), null, 2)}\n`);
}
