/** Lines of code: those that hold something other than blanks and comments. */
import ts from 'typescript';
import { partsOfSvelte } from './imports.ts';

export function linesOfCode(file: string, source: string): number {
  if (!file.endsWith('.svelte')) return linesOfScript(source);
  const { scripts, markup } = partsOfSvelte(source);
  const seen = markup.replace(/<!--[^]*?-->/g, '').replace(/\/\*[^]*?\*\//g, '');
  const written = seen.split('\n').filter((line) => line.trim() !== '').length;
  // The two lines of a script's own tags are code of the component.
  return scripts.reduce((sum, script) => sum + linesOfScript(script) + 2, written);
}

function linesOfScript(source: string): number {
  const file = ts.createSourceFile('source.ts', source, ts.ScriptTarget.Latest, true);
  const lines = new Set<number>();
  const visit = (node: ts.Node): void => {
    const children = node.getChildren(file);
    if (children.length === 0 && node.kind !== ts.SyntaxKind.EndOfFileToken && node.getWidth(file) > 0) {
      const first = file.getLineAndCharacterOfPosition(node.getStart(file)).line;
      const last = file.getLineAndCharacterOfPosition(node.getEnd()).line;
      for (let line = first; line <= last; line++) lines.add(line);
    }
    for (const child of children) if (!ts.isJSDoc(child)) visit(child);
  };
  visit(file);
  return lines.size;
}
