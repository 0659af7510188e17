/**
 * Lint, formatting, types, a recipe and the build: one check each. They use one
 * processor each, so two go side by side.
 */
import type { Part } from './options.ts';
import { run, type Run } from './programs.ts';
import { failed, type Result } from './result.ts';

async function check(given: Omit<Run, 'shows'>): Promise<Result> {
  const isGood = await run({ ...given, shows: 'at the end' });
  return isGood ? { passed: 1, failures: [], skipped: 0 } : failed(given.title);
}

async function inTurn(checks: readonly Omit<Run, 'shows'>[]): Promise<Result[]> {
  const results: Result[] = [];
  for (const next of checks) results.push(await check(next));
  return results;
}

const LINT = [
  { title: 'lint', program: 'eslint', args: ['.'] },
  { title: 'formatting', program: 'prettier', args: ['--check', '--log-level=warn', '.'] },
];

const TYPES = [
  ...['src-shared', 'src-main', 'tests'].map((layer) => ({
    title: `types of ${layer}`,
    program: 'typescript#tsc',
    args: ['-p', layer],
  })),
  {
    title: 'types of src-renderer',
    program: 'svelte-check',
    args: ['--tsconfig', 'src-renderer/tsconfig.json', '--fail-on-warnings'],
  },
];

/** One recipe of DEVELOPERS.md, followed in a copy of the tree. */
const RECIPE = {
  title: 'the recipe for a placement rule',
  program: 'tsx',
  args: ['tests/recipes/run.ts', '--quick', 'placement-rule'],
};

/** What the launcher's and the end-to-end tests run. */
const BUILD = { title: 'build', program: 'src-main/launcher/build.mjs', args: [] };

/** The quick checks that belong to `parts`. */
export async function quickChecks(parts: readonly Part[]): Promise<Result[]> {
  const needsBuild = parts.includes('unit') || parts.includes('e2e');
  const results = await Promise.all([
    inTurn([...(parts.includes('lint') ? LINT : []), ...(parts.includes('recipes') ? [RECIPE] : [])]),
    inTurn([...(parts.includes('types') ? TYPES : []), ...(needsBuild ? [BUILD] : [])]),
  ]);
  return results.flat();
}
