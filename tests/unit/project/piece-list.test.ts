/** Pieces added, duplicated, moved, removed, and knitted so many times. */
import { describe, expect, it } from 'vitest';
import { makePlan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { allOversOf, bandsOf } from '@shared/pattern/index.ts';
import {
  addPiece,
  addSize,
  applyChange,
  assertPieceName,
  duplicatePiece,
  freePieceName,
  invertChange,
  knitTimes,
  MOST_KNIT,
  MOST_PIECES,
  movePiece,
  pieceIn,
  projectAt,
  projectFromText,
  projectToText,
  removePiece,
  sampleProject,
  type Change,
  type PieceId,
  type Project,
  type ProjectAt,
} from '@shared/project/index.ts';

/** The sample in two sizes. */
const graded = applyChange(sampleProject(), addSize(projectAt(sampleProject()), 1, 'M', 'medium'));

function idsOf({ pieces }: Project): PieceId[] {
  return pieces.map(({ id }) => id);
}

/** The project after a change, looked at from `piece`; taken back it is the one before, and its file opens again. */
function after(project: ProjectAt, change: Change, piece: PieceId = project.at.piece): ProjectAt {
  const whole = applyChange(project.whole, change);
  expect(applyChange(whole, invertChange(project.whole, change))).toEqual(project.whole);
  expect(projectFromText(projectToText(whole))).toEqual(whole);
  return projectAt(whole, { ...project.at, piece });
}

/** So many plain pieces behind the sleeve. */
function withPieces(count: number): ProjectAt {
  let project = projectAt(graded);
  for (let piece = 2; piece <= count; piece++) {
    const { change, shown } = addPiece(project, `piece ${piece}`, `p${piece}`);
    project = projectAt(applyChange(project.whole, change), { piece: shown });
  }
  return project;
}

describe('the list of pieces', () => {
  it('gets a plain piece of the same yarn in every size, behind the one that is looked at', () => {
    const sleeve = projectAt(graded);
    const { change, shown } = addPiece(sleeve, 'back', 'p2');
    const back = after(sleeve, change, shown);
    expect(idsOf(back.whole)).toEqual(['piece-1', 'p2']);
    expect(back.piece).toMatchObject({ name: 'back', gauge: sleeve.piece.gauge, sections: [] });
    expect([bandsOf(back), allOversOf(back), back.knit]).toEqual([[], [], 1]);
    expect(makePlan(pieceIn(back)).groups).toEqual([]);
  });

  it('gets a copy that is planned as its original is, with patterns of its own', () => {
    const sleeve = projectAt(graded);
    const { change, shown } = duplicatePiece(sleeve, 'sleeve copy', 'p2', () => 'band-2');
    const copy = after(sleeve, change, shown);
    expect(bandsOf(copy)).toEqual(bandsOf(sleeve));
    expect(copy.whole.pieces[1]?.patterns.map(({ id }) => id)).toEqual(['band-2']);
    expect(makePlan(pieceIn(copy)).groups).toEqual(makePlan(pieceIn(sleeve)).groups);
  });

  it('is moved in, and ends at both ends', () => {
    const last = withPieces(3);
    expect(movePiece(last, 1)).toBeNull();
    const moved = after(last, movePiece(last, -1) as Change);
    expect(idsOf(moved.whole)).toEqual(['piece-1', 'p3', 'p2']);
    const first = after(moved, movePiece(moved, -1) as Change);
    expect(idsOf(first.whole)).toEqual(['p3', 'piece-1', 'p2']);
    expect(movePiece(first, -1)).toBeNull();
  });

  it.each([
    [0, 'p2'],
    [1, 'p3'],
    [2, 'p2'],
  ])('shows the neighbour of piece %i when that is removed', (index, shown) => {
    const { whole } = withPieces(3);
    const project = projectAt(whole, { piece: idsOf(whole)[index] as PieceId });
    const step = removePiece(project);
    expect(step?.shown).toBe(shown);
    expect(idsOf(after(project, step?.change as Change).whole)).not.toContain(project.at.piece);
  });

  it('keeps its only piece', () => {
    expect(removePiece(projectAt(graded))).toBeNull();
  });

  it('has a name for each piece, which no other is given', () => {
    const project = withPieces(3);
    const problemOfName = (name: string) => outcome(() => assertPieceName(project, name));
    expect(project.piece.name).toBe('piece 3');
    for (const name of ['piece 3', 'piece 4', 'Piece 2']) expect(problemOfName(name)).toMatchObject({ ok: true });
    // Blanks at the ends tell nobody anything.
    for (const name of ['piece 2', ' piece 2 ', 'sleeve']) {
      const problem = { code: 'piece-name-taken', facts: { name: name.trim() } };
      expect(problemOfName(name)).toMatchObject({ ok: false, problem });
    }
    expect(freePieceName(project.whole, (again) => `piece ${again}`)).toBe('piece 1');
    expect(freePieceName(project.whole, (again) => `piece ${again + 1}`)).toBe('piece 4');
  });

  it('may have two of one name in a file, and opens all the same', () => {
    const { pieces, ...others } = withPieces(3).whole;
    const twice = { ...others, pieces: pieces.map((piece) => ({ ...piece, name: 'front' })) };
    expect(projectFromText(projectToText(twice))).toEqual(twice);
  });

  it('has so many pieces and no more', () => {
    const full = withPieces(MOST_PIECES);
    const problem = { problem: { code: 'pieces-too-many' } };
    expect(outcome(() => addPiece(full, 'one more', 'other'))).toMatchObject(problem);
    expect(outcome(() => duplicatePiece(full, 'one more', 'other', () => 'band-2'))).toMatchObject(problem);
  });

  it('says how many are knitted of a piece, which is 1 or more and changes no plan', () => {
    const sleeve = projectAt(graded);
    const pair = after(sleeve, knitTimes(sleeve, 2) as Change);
    expect(pair.knit).toBe(2);
    expect(pieceIn(pair)).toEqual(pieceIn(sleeve));
    expect(knitTimes(pair, 2)).toBeNull();
    expect(knitTimes(sleeve, 0)).toBeNull();
    expect(after(sleeve, knitTimes(sleeve, MOST_KNIT + 1) as Change).knit).toBe(MOST_KNIT);
  });
});
