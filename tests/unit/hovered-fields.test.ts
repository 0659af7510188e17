/**
 * What a person reads who hovers over a field in an editor.
 *
 * Types are inferred from the schemas of `model.ts`, through a library and a
 * mapped type, either of which could lose the comments that stand there.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import { root } from '../runner/programs.ts';

const MODELS = [
  'bed/model.ts',
  'motif/model.ts',
  'pattern/model.ts',
  'piece/model.ts',
  'piece/size-model.ts',
  'project/model.ts',
].map((path) => join(root, 'src-shared', path));

/** Each is hovered over where its last name stands. */
const HOVERED = {
  'project.pieces[0]!.perSize[0]!.hemRows': 'Rows of the folded hem, 0 if there is none.',
  'project.pieces[0]!.hem.turning':
    'What is made of the row along which it folds: nothing, a row knitted looser, or a row of eyelets.',
  'project.pieces[0]!.knit': 'So many of it are knitted.',
  'looked.piece.hemRows': 'Rows of the folded hem, 0 if there is none.',
  'band.choice': 'Which of the ranked choices is taken, 0 being the best.',
  'band.groups[0]!.hasOwnBall':
    'Knitted from a ball of contrast of its own, instead of one carried across from the groups beside it.',
  'allOver.border': 'Stitches kept plain along the edges of every row, counted from the edge of the piece.',
  'project.motifs[0]!.grid': 'The drawing in cells; what a file has as `rows`.',
  'project.yarns[0]!.count': 'How thick it is, as its label says it, or null if not known.',
  'knit.hemRows': 'Rows of the folded hem, 0 if there is none.',
  'knitBand.choice': 'Which of the ranked choices is taken, 0 being the best.',
};

const SOURCE = join(root, 'src-shared', 'hovered.ts');
const TEXT = `import type { KnitPiece, Project, ProjectAt } from './project/index.ts';
declare const project: Project;
declare const looked: ProjectAt;
declare const knit: KnitPiece;
type OfKind<P, Kind> = Extract<P, { readonly kind: Kind }>;
declare const band: OfKind<ProjectAt['patterns'][number], 'band'>;
declare const allOver: OfKind<ProjectAt['patterns'][number], 'all-over'>;
declare const knitBand: OfKind<KnitPiece['patterns'][number], 'band'>;
${Object.keys(HOVERED).join(';\n')};
`;

let service: ts.LanguageService;
beforeAll(() => {
  const { config } = ts.readConfigFile(join(root, 'src-shared', 'tsconfig.json'), ts.sys.readFile) as {
    config: unknown;
  };
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, join(root, 'src-shared'));
  const read = (path: string): string | undefined => (path === SOURCE ? TEXT : ts.sys.readFile(path));
  service = ts.createLanguageService({
    getScriptFileNames: () => [SOURCE],
    getScriptVersion: () => '1',
    getScriptSnapshot: (path) => {
      const text = read(path);
      return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
    },
    getCurrentDirectory: () => root,
    getCompilationSettings: () => options,
    getDefaultLibFileName: ts.getDefaultLibFilePath,
    fileExists: (path) => path === SOURCE || ts.sys.fileExists(path),
    readFile: read,
    directoryExists: (path) => ts.sys.directoryExists(path),
    getDirectories: (path) => ts.sys.getDirectories(path),
  });
});

describe('a field of the project that is hovered over', () => {
  it.each(Object.entries(HOVERED))('is explained: %s', (path, comment) => {
    const at = TEXT.indexOf(path) + path.lastIndexOf('.') + 1;
    expect(ts.displayPartsToString(service.getQuickInfoAtPosition(SOURCE, at)?.documentation)).toBe(comment);
  });

  it('has every comment that stands in the schemas, on the field itself', () => {
    const shown = commentsOnFields();
    const written = MODELS.flatMap(commentsInSchemas);
    expect(written.length).toBeGreaterThan(50);
    expect(written.filter((comment) => !shown.has(comment))).toEqual([]);
  });
});

/** The comments that are shown with the fields of a project, and of what they hold. */
function commentsOnFields(): Set<string> {
  const program = service.getProgram() as ts.Program;
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(SOURCE) as ts.SourceFile;
  const comments = new Set<string>();
  const seen = new Set<ts.Type>();
  const visit = (type: ts.Type): void => {
    if (seen.has(type)) return;
    seen.add(type);
    if (type.isUnionOrIntersection()) type.types.forEach(visit);
    // A list has its items, and no fields of its own.
    const item = checker.getIndexTypeOfType(type, ts.IndexKind.Number);
    if (item) return visit(item);
    if (!(type.flags & ts.TypeFlags.Object)) return;
    for (const field of checker.getPropertiesOfType(type)) {
      comments.add(oneLine(ts.displayPartsToString(field.getDocumentationComment(checker))));
      visit(checker.getTypeOfSymbolAtLocation(field, source));
    }
  };
  for (const statement of source.statements) {
    if (!ts.isVariableStatement(statement)) continue;
    for (const { name } of statement.declarationList.declarations) visit(checker.getTypeAtLocation(name));
  }
  return comments;
}

/** The comments within what a file declares to be a schema; not those of the declarations themselves, which types have. */
function commentsInSchemas(path: string): string[] {
  const source = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  const comments: string[] = [];
  const visit = (node: ts.Node): void => {
    for (const { pos, end } of ts.getLeadingCommentRanges(source.text, node.getFullStart()) ?? []) {
      const comment = source.text.slice(pos, end);
      if (comment.startsWith('/**')) comments.push(oneLine(comment.slice(3, -2).replace(/^ *\* ?/gm, '')));
    }
    ts.forEachChild(node, visit);
  };
  for (const statement of source.statements) {
    if (!ts.isVariableStatement(statement)) continue;
    for (const { name, initializer } of statement.declarationList.declarations) {
      const isForKeptWork = name.getText().startsWith('laying');
      if (initializer && !isForKeptWork) ts.forEachChild(initializer, visit);
    }
  }
  return [...new Set(comments)];
}

/** Links as they are shown, without line breaks. */
function oneLine(comment: string): string {
  return comment
    .replace(/\{@link\s+(\w+)\s*\}/g, '$1')
    .replace(/\s+/g, ' ')
    .trim();
}
