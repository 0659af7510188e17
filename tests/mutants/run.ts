/**
 * `npm run mutants`: makes small faults in a copy of the tree, one at a time,
 * and runs the tests that reach it. Fails if one survives that was killed
 * before. `-- --renew` writes the record anew; `-- carriesOf` makes those alone
 * whose names hold the word; `-- --unchecked` does not look first whether all
 * tests pass without a fault.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import { copyOfTree } from '../runner/copy-of-tree.ts';
import { binary } from '../runner/programs.ts';
import { FOLDER_VARIABLE } from './nearest-first.ts';
import { mutated, placeOf } from './find.ts';
import { MUTANTS, nameOf } from './mutants.ts';
import { readRecord, writeRecord, type Outcome } from './record.ts';
import { coreSources } from './tree.ts';

const given = process.argv.slice(2);
const isRenewed = given.includes('--renew');
/** Whether the tests are seen to pass without a fault first. */
const isChecked = !given.includes('--unchecked');
const asked = given.filter((word) => !word.startsWith('--'));

interface Report {
  readonly numTotalTests: number;
  readonly testResults: readonly { readonly name: string; readonly status: string }[];
}

/**
 * The first test file that fails in the copy, or null: of `files`, or of all that compute from values.
 * Throws `Error` if no test ran at all.
 */
function killerIn(tree: string, folder: string, files: readonly string[]): Outcome {
  const out = join(tree, 'mutant.json');
  rmSync(out, { force: true });
  const options = ['run', '--config=tests/mutants/vitest.config.ts', '--reporter=json', `--outputFile.json=${out}`];
  spawnSync(process.execPath, [binary('vitest'), ...options, ...files], {
    cwd: tree,
    env: { ...process.env, [FOLDER_VARIABLE]: folder },
    stdio: 'ignore',
  });
  if (!existsSync(out)) throw new Error(`The tests did not run: vitest ${options.join(' ')}`);
  const report = JSON.parse(readFileSync(out, 'utf8')) as Report;
  const failed = report.testResults.find(({ status }) => status === 'failed');
  if (!failed && report.numTotalTests === 0) throw new Error(`No test ran: vitest ${options.join(' ')}`);
  return failed ? relative(tree, failed.name).replaceAll('\\', '/') : null;
}

/** Asks the test that saw the fault before, then all. */
function outcomeOf(tree: string, file: string, before: Outcome | undefined): Outcome {
  const folder = basename(dirname(file));
  const known = before && existsSync(join(tree, before)) ? killerIn(tree, folder, [before]) : null;
  return known ?? killerIn(tree, folder, []);
}

const sources = coreSources();
const record = readRecord();
const chosen = MUTANTS.filter((mutant) => asked.length === 0 || asked.some((word) => nameOf(mutant).includes(word)));
// All are looked for before the first one is made, so that a name that changed is heard of at once.
const places = chosen.map((mutant) => ({ mutant, place: placeOf(mutant, sources) }));

const lost: string[] = [];
let killed = 0;
const tree = copyOfTree('mutants');
try {
  const failing = isChecked ? killerIn(tree, '', []) : null;
  if (failing !== null) throw new Error(`Without any fault ${failing} fails already, so that it tells nothing.`);
  for (const { mutant, place } of places) {
    const name = nameOf(mutant);
    const path = join(tree, place.file);
    const before = record.get(name);
    writeFileSync(path, mutated(mutant, place, sources));
    const outcome = outcomeOf(tree, place.file, before);
    writeFileSync(path, sources.get(place.file) as string);
    if (outcome !== null) killed++;
    else if (typeof before === 'string') lost.push(name);
    console.log(outcome === null ? `survived ${name}` : `killed   ${name}  (${outcome})`);
    record.set(name, outcome);
    // After each, so that what was found stays if the rest is broken off.
    if (isRenewed) writeRecord(MUTANTS.map(nameOf), record);
  }
} finally {
  rmSync(tree, { recursive: true, force: true });
}

console.log(`\n${killed} of ${places.length} killed`);
if (lost.length > 0) {
  console.log(`\nKilled before, and now not seen:\n${lost.map((name) => `  ${name}`).join('\n')}`);
  process.exitCode = 1;
}
