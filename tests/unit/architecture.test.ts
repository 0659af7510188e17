import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { arrowsOnCircles, circleText, folderOf } from '../architecture/circles.ts';
import { hasSession, ROOTS } from '../architecture/components-with-session.ts';
import { importsOf, LAYERS, sourceTree, specifiersIn, type Tree } from '../architecture/imports.ts';
import { drawnLayers } from '../architecture/drawn-layers.ts';

const root = resolve(import.meta.dirname, '../..');
const sources = sourceTree(root);
const imports = importsOf(sources);

describe('imports between folders', () => {
  it('lie on no circle', () => {
    const found = arrowsOnCircles(imports);
    // One import may put many arrows on circles: it is likely on the shortest, and alone.
    found.sort((a, b) => a.circle.length - b.circle.length || a.imports.length - b.imports.length);
    expect(found.map(circleText)).toEqual([]);
  });

  it.each(LAYERS)('of %s go down its drawing in DEVELOPERS.md, in which each folder has its line', (layer) => {
    const lines = drawnLayers(readFileSync(resolve(root, 'DEVELOPERS.md'), 'utf8')).get(layer) ?? [];
    const lineOf = (file: string): number => lines.findIndex((names) => names.includes(file.split('/')[1] ?? ''));
    const between = imports.filter(
      ({ from, to }) =>
        [from, to].every((file) => file.startsWith(`${layer}/`)) &&
        folderOf(from) !== layer &&
        folderOf(from) !== folderOf(to),
    );
    const upwards = between.filter(({ from, to }) => lineOf(to) <= lineOf(from));
    expect(upwards.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
    const folders = new Set(sources.files.map(folderOf).filter((folder) => folder.startsWith(`${layer}/`)));
    expect(lines.flat().sort()).toEqual([...folders].map((folder) => folder.slice(layer.length + 1)).sort());
  });
});

describe('imports between files', () => {
  it.each(LAYERS)('of %s lie on no circle', (layer) => {
    const own = imports.filter(({ from }) => from.startsWith(`${layer}/`));
    expect(arrowsOnCircles(own, (file) => file).map(circleText)).toEqual([]);
  });
});

describe('the doors of the core', () => {
  it('open on their own folder: nobody passes on what is declared in another', () => {
    const passedOn = sources.files
      .filter((file) => file.startsWith('src-shared/'))
      .flatMap((file) =>
        [...sources.read(file).matchAll(/^export (?:type )?(?:\*|\{[^}]*\}) from '(\.\.\/[^']+)';/gm)].map(
          ([, from]) => `${file} passes on ${from}`,
        ),
      );
    expect(passedOn).toEqual([]);
  });
});

describe('components', () => {
  it('are given values and callbacks: those alone that put others together have the session', () => {
    const components = sources.files.filter((file) => file.endsWith('.svelte'));
    const having = components.filter((file) => hasSession(sources.read(file)));
    expect(having).toEqual([...ROOTS].sort());
  });

  it.each([
    ['in its props', '<script>const { session, viewModel }: Props = $props();</script>'],
    ['by its type', "<script>import type { Session } from '../session/session.ts';</script>"],
    ['under another name', '<script>const { session: held } = $props();</script>'],
    ['in the markup', '<Yarns {session} />'],
  ])('have it %s', (_, source) => {
    expect(hasSession(source)).toBe(true);
  });

  it.each([
    "<script>import { newId } from '../session/new-id.ts';</script>",
    '<!-- The session is given elsewhere. -->',
    '<script>\n// of the session\n/** The session. */\nconst sessions = 1;</script>',
  ])('do not have it by %s', (source) => {
    expect(hasSession(source)).toBe(false);
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
