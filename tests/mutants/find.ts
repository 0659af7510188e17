/** Where the text that a mutant replaces stands in the sources. */
import ts from 'typescript';
import type { Mutant } from './mutants.ts';

/** The sources by their paths. */
export type Sources = ReadonlyMap<string, string>;

export interface Place {
  readonly file: string;
  readonly start: number;
  readonly end: number;
}

/**
 * The one place of a mutant's text. Throws `Error` if it stands nowhere or more
 * than once: a mutant that is not made proves nothing.
 */
export function placeOf({ in: where, text }: Mutant, sources: Sources): Place {
  const pattern = new RegExp(text.trim().split(/\s+/).map(escaped).join('\\s+'), 'g');
  const places = [...sources].flatMap(([file, source]) => {
    if (!source.includes(where) || source.search(pattern) < 0) return [];
    return declarationsCalled(where, file, source).flatMap(([from, to]) =>
      [...source.slice(from, to).matchAll(pattern)].map((match): Place => {
        const start = from + match.index;
        return { file, start, end: start + match[0].length };
      }),
    );
  });
  const [place] = places;
  if (places.length === 1 && place) return place;
  const found =
    places.length === 0 ? 'nowhere' : `${places.length} times (${places.map(({ file }) => file).join(', ')})`;
  throw new Error(`In "${where}" the text "${text}" stands ${found}, not once. Write anew what it is now called.`);
}

/** The source of the mutant's file with the fault made. */
export function mutated({ becomes }: Mutant, { file, start, end }: Place, sources: Sources): string {
  const source = sources.get(file) as string;
  return source.slice(0, start) + becomes + source.slice(end);
}

/** Start and end of each function, method or variable of that name. */
function declarationsCalled(name: string, file: string, source: string): [number, number][] {
  const found: [number, number][] = [];
  const visit = (node: ts.Node): void => {
    const isDeclaration =
      ts.isFunctionDeclaration(node) || ts.isMethodDeclaration(node) || ts.isVariableDeclaration(node);
    if (isDeclaration && node.name && ts.isIdentifier(node.name) && node.name.text === name) {
      found.push([node.getStart(), node.getEnd()]);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true));
  return found;
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
}
