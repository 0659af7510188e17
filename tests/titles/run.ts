/**
 * `npm run titles`: whether each test that was listed in `titles.txt` is still
 * there, or a line of `moved.ts` says where it went and why. `-- --renew`
 * writes the list as it is now. It is built first: runners do not list the
 * tests that need what was built where nothing was.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compareTitles } from './compare.ts';
import { listedTitles } from './listed.ts';
import { MOVED } from './moved.ts';

const PATH = join(import.meta.dirname, 'titles.txt');

const now = listedTitles();
if (process.argv.includes('--renew')) {
  writeFileSync(PATH, `${now.join('\n')}\n`);
  console.log(`${now.length} titles written`);
} else {
  const recorded = readFileSync(PATH, 'utf8').trimEnd().split('\n');
  const { unaccounted, missing, idle } = compareTitles(recorded, now, MOVED);
  const problems: readonly (readonly [string, readonly string[]])[] = [
    ['Gone without a line in tests/titles/moved.ts', unaccounted],
    ['Not there, though a line in tests/titles/moved.ts says so', missing],
    ['Lines in tests/titles/moved.ts about nothing that went', idle.map(({ old }) => old)],
  ];
  console.log(`${recorded.length} titles recorded, ${now.length} now`);
  for (const [what, titles] of problems) {
    if (titles.length === 0) continue;
    console.log(`\n${what}:\n${titles.map((title) => `  ${title}`).join('\n')}`);
    process.exitCode = 1;
  }
}
