/** Projects as tests write them down: looked at from a piece, with other fields than it has. */
import {
  applyEdits,
  emptyProject,
  pieceOf,
  projectAt,
  projectToText,
  setPieceFields,
  setPieceInSizes,
  type Project,
  type ProjectAt,
} from '../src-shared/project/index.ts';
import { namesOf, patternsOf, type PatternName } from '../src-shared/pattern/index.ts';
import { TO_THE_TOP, type Extent } from '../src-shared/piece/index.ts';
import { patternFields, patternInSizes } from '../src-shared/project/put-back.ts';

type Fields = Partial<Omit<ProjectAt, 'whole' | 'at' | 'knit'>>;

/** A project that is, looked at from its piece, as `fields` say: numbers and placings in the size that is looked at. */
export function settled(project: ProjectAt, fields: Fields = {}): ProjectAt {
  const { piece, patterns: asked, ...own } = { ...project, ...fields };
  const { whole: before, at, knit: _, ...shared } = own;
  const whole: Project = { ...shared, pieces: before.pieces };
  const from = projectAt(whole, at);
  const named = applyEdits(whole, setPieceFields(from, piece));
  const sized = { size: at.size, sizes: whole.sizes.map(({ id }) => id) };
  const of = pieceOf(named, at.piece);
  const names = namesOf(asked);
  const patterns = asked.map((pattern, index) => {
    const { kind, number } = names[index] as PatternName;
    const there = patternsOf(of, kind)[number];
    const prefix = kind === 'band' ? 'band' : 'fill';
    return there
      ? { ...there, ...patternFields(there, pattern, sized) }
      : patternInSizes(`${prefix}-${number + 1}`, pattern, sized);
  });
  return projectAt(applyEdits(named, [setPieceInSizes(at.piece, { patterns } as object)]), at);
}

/** What a project of one piece and one size is made of. */
export type Written = Pick<
  ProjectAt,
  'name' | 'notes' | 'machine' | 'yarns' | 'mainYarn' | 'motifs' | 'piece' | 'patterns'
> &
  Partial<Pick<ProjectAt, 'yarnMargin'>>;

/** A project of one piece and one size. */
export function writtenProject(written: Written): ProjectAt {
  return settled(projectAt(emptyProject('', '')), written);
}

/** The text of the file of a project with the fields that it is written down with. */
export function fileTextOf(project: ProjectAt): string {
  return projectToText(settled(project).whole);
}

/** The rows of an all-over by their numbers; null: up to the top. */
export function onRows(first: number, last: number | null = null): Extent {
  return {
    kind: 'from-to',
    from: { kind: 'from-row', row: first },
    to: last === null ? TO_THE_TOP : { kind: 'to-row', row: last },
  };
}
