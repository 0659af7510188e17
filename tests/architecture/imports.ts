/**
 * Which file imports which, in a folder of sources: `import`, `import type`,
 * `export … from`, `import()` and `import('…').Type`, in TypeScript, JavaScript
 * and Svelte. An import of a type counts as any other: what it names must be
 * known all the same.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative } from 'node:path';
import ts from 'typescript';

/** The folders of sources. */
export const LAYERS = ['src-shared', 'src-main', 'src-renderer'] as const;

/** Paths from the project's folder, with `/` between their parts. */
export interface Import {
  readonly from: string;
  readonly to: string;
}

/** A tree of files: how they are listed and read. */
export interface Tree {
  readonly files: readonly string[];
  read(file: string): string;
}

const SOURCE = /\.(ts|mjs|svelte)$/;

/** The sources of a project's folder. */
export function sourceTree(root: string, layers: readonly string[] = LAYERS): Tree {
  const files = layers.flatMap((layer) =>
    readdirSync(join(root, layer), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && SOURCE.test(entry.name))
      .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/')),
  );
  return { files: files.sort(), read: (file) => readFileSync(join(root, file), 'utf8') };
}

/** All imports of one of the files by another. What is imported from packages is left out. */
export function importsOf(tree: Tree): Import[] {
  const known = new Set(tree.files);
  return tree.files.flatMap((from) => {
    const named = new Set(specifiersIn(from, tree.read(from)).map((specifier) => resolved(from, specifier)));
    return [...named].flatMap((to) => (to !== null && known.has(to) ? [{ from, to }] : []));
  });
}

/** The path that a specifier means, or null for a package. */
function resolved(from: string, specifier: string): string | null {
  const path = specifier.replace(/\?.*$/, '');
  if (path.startsWith('@shared/')) return `src-shared/${path.slice('@shared/'.length)}`;
  return path.startsWith('.') ? posix.join(dirname(from).replaceAll('\\', '/'), path) : null;
}

/** Everything that a source names after `from` or in `import()`. */
export function specifiersIn(file: string, source: string): string[] {
  if (!file.endsWith('.svelte')) return specifiersOfScript(source);
  const { scripts, markup } = partsOfSvelte(source);
  const inMarkup = [...markup.matchAll(/\bimport\(\s*['"]([^'"]+)['"]\s*\)/g)].map(
    ([, specifier]) => specifier as string,
  );
  return [...scripts.flatMap(specifiersOfScript), ...inMarkup];
}

/** The scripts of a component, and all else of it. */
export function partsOfSvelte(source: string): { readonly scripts: readonly string[]; readonly markup: string } {
  const scripts: string[] = [];
  const markup = source.replace(/<script[^>]*>([^]*?)<\/script>/g, (_, script: string) => {
    scripts.push(script);
    return '';
  });
  return { scripts, markup };
}

function specifiersOfScript(source: string): string[] {
  const found: string[] = [];
  const take = (node: ts.Node | undefined): void => {
    if (node && ts.isStringLiteralLike(node)) found.push(node.text);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) take(node.moduleSpecifier);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) take(node.argument.literal);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) take(node.arguments[0]);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('source.ts', source, ts.ScriptTarget.Latest));
  return found;
}
