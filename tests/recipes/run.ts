/**
 * `npm run recipes`: does what each recipe says in a copy of the tree, and sees
 * that format, lint and types pass there and that the new thing appears where
 * it should. `-- placement-rule` does that one alone; `-- --quick` asks only the
 * types of the core and the tests.
 */
import { rmSync } from 'node:fs';
import { copyOfTree } from '../runner/copy-of-tree.ts';
import { run, type Run } from '../runner/programs.ts';
import { applyPatch, patchOf, RECIPES, type Recipe } from './recipes.ts';

type Check = Pick<Run, 'title' | 'program' | 'args'>;

const given = process.argv.slice(2);
const isQuick = given.includes('--quick');
const asked = given.filter((word) => !word.startsWith('--'));

const types = (layer: string): Check => ({
  title: `types of ${layer}`,
  program: 'typescript#tsc',
  args: ['-p', layer],
});

function checksOf({ name, takenUpBy }: Recipe, touched: readonly string[]): Check[] {
  const tests = [`tests/recipes/appears/${name}.test.ts`, ...takenUpBy, ...touched].filter((file) =>
    file.endsWith('.test.ts'),
  );
  const appears: Check = {
    title: 'it appears',
    program: 'vitest',
    args: ['run', '--config=tests/recipes/vitest.config.ts', '--reporter=dot', ...new Set(tests)],
  };
  if (isQuick) return [types('src-shared'), appears];
  const code = touched.filter((file) => /\.(ts|mjs|svelte)$/.test(file));
  return [
    { title: 'formatting', program: 'prettier', args: ['--check', '--log-level=warn', ...touched] },
    { title: 'lint', program: 'eslint', args: code },
    ...['src-shared', 'src-main', 'tests'].map(types),
    {
      title: 'types of src-renderer',
      program: 'svelte-check',
      args: ['--tsconfig', 'src-renderer/tsconfig.json', '--fail-on-warnings'],
    },
    appears,
  ];
}

/** What does not hold once a recipe was followed. */
async function failuresOf(recipe: Recipe): Promise<string[]> {
  const folder = copyOfTree('recipe');
  try {
    const files = patchOf(recipe);
    applyPatch(files, folder);
    const paths = files.map(({ path }) => path);
    const failures: string[] = [];
    for (const check of checksOf(recipe, paths)) {
      const isGood = await run({ ...check, title: `${recipe.name}: ${check.title}`, folder, shows: 'at the end' });
      if (!isGood) failures.push(`${recipe.name}: ${check.title}`);
    }
    return failures;
  } catch (error) {
    console.error((error as Error).message);
    return [`${recipe.name}: the patch does not fit`];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const unknown = asked.filter((name) => !RECIPES.some((recipe) => recipe.name === name));
if (unknown.length > 0) {
  console.error(`There is no recipe ${unknown.join(', ')}. There are: ${RECIPES.map(({ name }) => name).join(', ')}.`);
  process.exit(2);
}
const failures: string[] = [];
for (const recipe of RECIPES) {
  if (asked.length === 0 || asked.includes(recipe.name)) failures.push(...(await failuresOf(recipe)));
}
if (failures.length > 0) console.log(`\nFailed:\n${failures.map((name) => `  ${name}`).join('\n')}`);
process.exitCode = failures.length === 0 ? 0 : 1;
