/** Schemas are values at the edge alone; what computes knows their types, and so cannot check, or change, what it is given. */
import { resolve } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';
import { sourceTree } from '../../architecture/imports.ts';

/** Files that describe what comes from outside. */
const AT_THE_EDGE = [
  /^src-shared\/schema\//,
  /[/-](model|file|contract)\.ts$/,
  'src-shared/host/sealed/joining.ts',
  'src-main/browser-host/ports.ts',
  'src-main/cli/own-files.ts',
  'src-main/services/kept-journal.ts',
  'src-main/services/recent.ts',
];

const isSchema = (name: string): boolean => name === 'z' || /Schema$/.test(name);

/** Schemas, and what makes them, that a source imports as values. */
function schemasIn(source: string): string[] {
  const script = ts.createSourceFile('a.ts', source, ts.ScriptTarget.Latest);
  return script.statements.flatMap((statement) => {
    if (!ts.isImportDeclaration(statement)) return [];
    const { importClause } = statement;
    const named = importClause?.namedBindings;
    if (!importClause || importClause.phaseModifier === ts.SyntaxKind.TypeKeyword) return [];
    if (!named || !ts.isNamedImports(named)) return [];
    return named.elements
      .filter(({ isTypeOnly, name, propertyName }) => !isTypeOnly && isSchema((propertyName ?? name).text))
      .map(({ name }) => name.text);
  });
}

it('schemas are imported as values by models, files and contracts alone', () => {
  const { files, read } = sourceTree(resolve(import.meta.dirname, '../../..'));
  const isAtTheEdge = (file: string): boolean =>
    AT_THE_EDGE.some((edge) => (typeof edge === 'string' ? edge === file : edge.test(file)));
  const others = files.filter((file) => file.endsWith('.ts') && !isAtTheEdge(file));
  expect(others.flatMap((file) => schemasIn(read(file)).map((name) => `${file} imports ${name}`))).toEqual([]);
  const used = files.filter(isAtTheEdge).flatMap((file) => (file.endsWith('.ts') ? schemasIn(read(file)) : []));
  expect(used).toContain('positionSchema');
});

it('which is seen of an import of a value, and not of a type', () => {
  expect(schemasIn("import { refuse, z } from './index.ts';")).toEqual(['z']);
  expect(schemasIn("import { bandSchema as x } from '../pattern/index.ts';")).toEqual(['x']);
  expect(schemasIn("import type { z } from './index.ts';\nimport { type z as y } from './index.ts';")).toEqual([]);
});
