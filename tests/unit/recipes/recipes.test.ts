import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { patched } from '../../recipes/patch.ts';
import { patchOf, RECIPES } from '../../recipes/recipes.ts';

const root = resolve(import.meta.dirname, '../../..');

describe('the recipes', () => {
  it.each(RECIPES)('for a $name has a patch that fits the tree as it is', (recipe) => {
    const files = patchOf(recipe);
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      const path = join(root, file.path);
      expect(patched(file, existsSync(path) ? readFileSync(path, 'utf8') : null)).not.toBe('');
    }
  });

  it('are all told of in DEVELOPERS.md, and every patch and test is one of theirs', () => {
    const guide = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
    const names = RECIPES.map(({ name }) => name).sort();
    expect(names.filter((name) => !guide.includes(`tests/recipes/${name}.patch`))).toEqual([]);
    const filesIn = (folder: string, ending: string): string[] =>
      readdirSync(join(root, folder)).flatMap((name) => (name.endsWith(ending) ? [name.slice(0, -ending.length)] : []));
    expect(filesIn('tests/recipes', '.patch').sort()).toEqual(names);
    expect(filesIn('tests/recipes/appears', '.test.ts').sort()).toEqual(names);
  });
});
