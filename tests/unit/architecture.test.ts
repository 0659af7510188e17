import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { arrowsOnCircles, circleText, folderOf } from '../architecture/circles.ts';
import { importsOf, sourceTree, specifiersIn, type Tree } from '../architecture/imports.ts';
import { CORE_LAYERS } from '../architecture/core-layers.ts';

const imports = importsOf(sourceTree(resolve(import.meta.dirname, '../..')));

describe('imports between folders', () => {
  it('lie on no circle', () => {
    const found = arrowsOnCircles(imports);
    // One import may put many arrows on circles: it is likely on the shortest, and alone.
    found.sort((a, b) => a.circle.length - b.circle.length || a.imports.length - b.imports.length);
    expect(found.map(circleText)).toEqual([]);
  });

  it('go down the layers of the core, each of whose folders has a place', () => {
    const layerOf = (file: string): number =>
      CORE_LAYERS.findIndex((layer) => layer.includes(file.split('/')[1] ?? ''));
    const inCore = imports.filter(({ from, to }) => folderOf(from) !== folderOf(to) && from.startsWith('src-shared/'));
    expect(inCore.filter(({ from, to }) => layerOf(to) < 0 || layerOf(from) <= layerOf(to))).toEqual([]);
    expect(
      new Set(
        inCore
          .map(({ from, to }) => [from, to])
          .flat()
          .map(layerOf),
      ),
    ).toEqual(new Set(CORE_LAYERS.keys()));
  });
});

describe('imports between files', () => {
  it.each(['src-shared', 'src-main', 'src-renderer'])('of %s lie on no circle', (layer) => {
    const own = imports.filter(({ from }) => from.startsWith(`${layer}/`));
    expect(arrowsOnCircles(own, (file) => file).map(circleText)).toEqual([]);
  });
});

/** A made-up tree of files. */
function treeOf(files: Readonly<Record<string, string>>): Tree {
  return { files: Object.keys(files), read: (file) => files[file] as string };
}

/** The arrows on circles of a tree in which `text` of `strands` leads back from `yarn`. */
function arrowsWith(text: string, name = 'a.ts'): string[] {
  const tree = treeOf({
    'src-shared/yarn/need.ts': "import { x } from '../strands/index.ts';",
    'src-shared/strands/index.ts': 'export const x = 1;',
    'src-shared/yarn/index.ts': 'export const y = 1;',
    [`src-shared/strands/${name}`]: text,
  });
  return arrowsOnCircles(importsOf(tree)).map(({ arrow }) => arrow);
}

const CIRCLE = ['src-shared/strands → src-shared/yarn', 'src-shared/yarn → src-shared/strands'];

describe('the walk over imports sees a circle', () => {
  it.each([
    ['a value', "import { y } from '../yarn/index.ts';"],
    ['a type', "import type { y } from '../yarn/index.ts';"],
    ['what is imported for its effect', "import '../yarn/index.ts';"],
    ['what is passed on', "export * from '../yarn/index.ts';"],
    ['a type that is passed on', "export type { y } from '../yarn/index.ts';"],
    ['what is loaded late', "export const late = () => import('../yarn/index.ts');"],
    ['a type by its file', "export type Y = typeof import('../yarn/index.ts').y;"],
    ['the alias of the core', "import { y } from '@shared/yarn/index.ts';"],
    ['what the bundler turns into something else', "import Y from '../yarn/index.ts?worker&inline';"],
  ])('through %s', (_, text) => {
    expect(arrowsWith(text)).toEqual(CIRCLE);
  });

  it.each([
    ['the script', '<script lang="ts">\n  import { y } from "../yarn/index.ts";\n</script>\n<p>{y}</p>'],
    ['the script of the module', '<script module lang="ts">export * from "../yarn/index.ts";</script>'],
    ['the markup', "{#await import('../yarn/index.ts') then y}{y}{/await}"],
  ])('through %s of a component', (_, text) => {
    expect(arrowsWith(text, 'A.svelte')).toEqual(CIRCLE);
  });

  it('of three folders, and leaves out what only leads to it', () => {
    const tree = treeOf({
      'src-main/a/x.ts': "import '../b/deep/x.ts';",
      'src-main/b/deep/x.ts': "import '../../c/x.ts';",
      'src-main/c/x.ts': "import '../a/x.ts';",
      'src-main/d/x.ts': "import '../a/x.ts';",
    });
    const found = arrowsOnCircles(importsOf(tree));
    expect(found.map(({ arrow }) => arrow)).toEqual([
      'src-main/a → src-main/b',
      'src-main/b → src-main/c',
      'src-main/c → src-main/a',
    ]);
    expect(found.map(circleText)[0]).toBe(
      'src-main/a → src-main/b, on the circle src-main/a → src-main/b → src-main/c → src-main/a ' +
        '(src-main/a/x.ts imports src-main/b/deep/x.ts)',
    );
  });

  it('and none where there is none', () => {
    expect(arrowsWith('export const a = 1;')).toEqual([]);
    expect(arrowsWith("// import { y } from '../yarn/index.ts';")).toEqual([]);
    expect(arrowsWith('export const a = "import \'../yarn/index.ts\'";')).toEqual([]);
    expect(arrowsWith("import { z } from 'yarn/index.ts';")).toEqual([]);
  });

  it('between folders, not between a folder and one in it', () => {
    const tree = treeOf({
      'src-shared/yarn/index.ts': "import './kinds/x.ts';",
      'src-shared/yarn/kinds/x.ts': "import '../index.ts';",
    });
    expect(arrowsOnCircles(importsOf(tree))).toEqual([]);
    expect(folderOf('src-shared/yarn/kinds/x.ts')).toBe('src-shared/yarn');
    expect(folderOf('src-renderer/main.ts')).toBe('src-renderer');
  });

  it('between two files of a folder, where files are asked', () => {
    const tree = treeOf({ 'src-main/a/x.ts': "import './y.ts';", 'src-main/a/y.ts': "import './x.ts';" });
    const found = arrowsOnCircles(importsOf(tree), (file) => file);
    expect(found.map(({ arrow }) => arrow)).toEqual([
      'src-main/a/x.ts → src-main/a/y.ts',
      'src-main/a/y.ts → src-main/a/x.ts',
    ]);
  });

  it('by names that stand in the text', () => {
    expect(specifiersIn('a.mjs', "import a from './a.mjs';\nexport { b } from './b.mjs';")).toEqual([
      './a.mjs',
      './b.mjs',
    ]);
  });
});
