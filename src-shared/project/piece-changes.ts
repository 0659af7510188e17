/** Changes of a piece that counts given as lengths follow, in every size. */
import { namesOf, repositioned, type PatternInSizes, type PatternName } from '../pattern/index.ts';
import { fitted, fittedPlace, type Piece, type SectionRows } from '../piece/index.ts';
import { applyChange, applyEdits, changeOf, type Change, type ChangeName } from './change.ts';
import type { Edit } from './edit.ts';
import { differing, setNumbers, setPattern, setPiece, setPieceFields } from './edit-makers.ts';
import { pieceOf, type Project } from './model.ts';
import { projectAt, type ProjectAt } from './project-at.ts';
import { numbersOf, sectionRowsAfter, sectionsAlike } from './put-back.ts';
import { inSize } from './sizes.ts';

/** The project after a change, looked at where it was. */
export function afterChange({ whole, at }: ProjectAt, change: Change): ProjectAt {
  return projectAt(applyChange(whole, change), at);
}

/** The piece that is looked at with other fields; numbers are those of the size that is looked at. */
export function changePiece(project: ProjectAt, name: ChangeName, to: Partial<Piece>): Change {
  const edits = pieceEdits(project, to);
  const [first, ...others] = edits.length > 0 ? edits : setPiece(project, to);
  return changeOf(name, first as Edit, ...others);
}

/** What makes the piece that is looked at have other fields; nothing where it has them. */
export function pieceEdits(project: ProjectAt, to: Partial<Piece>): Edit[] {
  const { piece } = project;
  const changed = fitted(piece, { ...piece, ...to });
  const own = setPieceFields(project, changed);
  const after = applyEdits(project.whole, own);
  return [...own, ...positionEdits(project, changed), ...otherSizes(project, to.sections ?? piece.sections, after)];
}

/** What a length from an edge is measured on. */
const MEASURED_ON = ['shape', 'hemRows', 'hem', 'sections', 'gauge'] as const satisfies readonly (keyof Piece)[];

/**
 * What keeps patterns at their lengths from an edge or from the hem when the
 * piece that is looked at becomes `changed`: the rows that come nearest in this
 * size. They are said anew where those of another size stood, as these may be
 * the nearest in no size any more.
 */
export function positionEdits(project: ProjectAt, changed: Piece): Edit[] {
  const differs = differing(project.piece, changed);
  if (MEASURED_ON.every((of) => !(of in differs))) return [];
  const { patterns: inAllSizes } = pieceOf(project.whole, project.at.piece);
  const names = namesOf(inAllSizes);
  return project.patterns.flatMap((pattern, index) => {
    const { position } = repositioned(pattern, (place) => fittedPlace(project.piece, changed, place, place));
    const { kind, number } = names[index] as PatternName;
    const { position: said } = inAllSizes[index] as PatternInSizes;
    const to = differing({ position: said }, { position });
    return Object.keys(to).length === 0 ? [] : [setPattern(project, kind, number, to)];
  });
}

/**
 * The numbers that follow in the sizes that are not looked at, each from its
 * own lengths, when all that sizes share is as in `after`; `sections`: the sections
 * as they were asked for.
 */
function otherSizes(before: ProjectAt, sections: Piece['sections'], after: Project): Edit[] {
  const alike = sectionsAlike(pieceOf(before.whole, before.at.piece));
  return before.sizes.flatMap((_, index) => {
    const { at, piece } = inSize(before, index);
    if (at.size === before.at.size) return [];
    const now = projectAt(after, at).piece;
    const rows = sectionRowsAfter(before.piece.sections, sections, piece.sections, alike);
    const given = now.sections.map(({ rows: _rows, lengthMm: _mm, ...section }, part) => ({
      ...section,
      ...(rows[part] as SectionRows),
    }));
    const to = differing(numbersOf(now), numbersOf(fitted(piece, { ...now, sections: given })));
    return Object.keys(to).length === 0 ? [] : [setNumbers(at, to)];
  });
}
