/** The size of the sources in figures, folder by folder. */
import { arrowsOnCircles, folderOf, type Arrow } from './circles.ts';
import { importsOf, type Tree } from './imports.ts';
import { linesOfCode } from './lines.ts';

/** A file of at most so many lines of code is a small one. */
export const SMALL_FILE = 25;

/** How many of the longest files are named. */
const NAMED = 10;

export interface FolderFigures {
  /** Lines of code, without comments and blanks. */
  readonly lines: number;
  readonly files: number;
  /** Files of at most {@link SMALL_FILE} lines. */
  readonly small: number;
  /** Files that one other file imports. */
  readonly oneImporter: number;
  readonly longest: { readonly file: string; readonly lines: number };
}

export interface Figures {
  readonly folders: { readonly [folder: string]: FolderFigures };
  readonly all: FolderFigures;
  readonly longest: readonly { readonly file: string; readonly lines: number }[];
  /** Imports between folders that lie on a circle. */
  readonly onCircles: readonly Arrow[];
}

export function figuresOf(tree: Tree): Figures {
  const imports = importsOf(tree);
  const importers = new Map<string, number>();
  for (const { to } of imports) importers.set(to, (importers.get(to) ?? 0) + 1);
  const files = tree.files.map((file) => ({
    file,
    lines: linesOfCode(file, tree.read(file)),
    isImportedOnce: importers.get(file) === 1,
  }));
  const longestFirst = [...files].sort((a, b) => b.lines - a.lines || (a.file < b.file ? -1 : 1));
  const of = (some: typeof files): FolderFigures => ({
    lines: some.reduce((sum, { lines }) => sum + lines, 0),
    files: some.length,
    small: some.filter(({ lines }) => lines <= SMALL_FILE).length,
    oneImporter: some.filter(({ isImportedOnce }) => isImportedOnce).length,
    longest: named(some[0]),
  });
  const byFolder = new Map<string, typeof files>();
  for (const one of longestFirst) byFolder.set(folderOf(one.file), [...(byFolder.get(folderOf(one.file)) ?? []), one]);
  return {
    folders: Object.fromEntries(
      [...byFolder].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, own]) => [name, of(own)]),
    ),
    all: of(longestFirst),
    longest: longestFirst.slice(0, NAMED).map(named),
    onCircles: arrowsOnCircles(imports).map(({ arrow }) => arrow),
  };
}

function named(one: { readonly file: string; readonly lines: number } | undefined): FolderFigures['longest'] {
  return { file: one?.file ?? '', lines: one?.lines ?? 0 };
}
