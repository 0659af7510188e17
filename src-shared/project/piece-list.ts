/** Pieces added, duplicated, moved in their list, removed, and knitted so many times: each as one {@link Change}. */
import type { PatternId } from '../pattern/index.ts';
import { problemError } from '../problem/index.ts';
import { changeOf, type Change } from './change.ts';
import { insertInto, moveWithin, removeFrom, setPieceInSizes } from './edit-makers.ts';
import { MOST_KNIT, MOST_PIECES, pieceOf, type PieceId, type PieceInSizes, type Project } from './model.ts';
import type { ProjectAt } from './project-at.ts';
import { pieceInSizes } from './put-back.ts';
import { START_PIECE } from './start.ts';

/** A change of the list, and the piece to look at after it. */
export interface PiecesStep {
  readonly change: Change;
  readonly shown: PieceId;
}

/** Index in the project of the piece that is looked at. */
export function currentPiece({ whole, at }: Pick<ProjectAt, 'whole' | 'at'>): number {
  return whole.pieces.findIndex(({ id }) => id === at.piece);
}

/**
 * Throws `piece-name-taken` where another piece than the one that is looked at
 * is called so: by its name a piece is told apart on the sheet, in the names of
 * files and on the command line. A file may have two of one name all the same.
 */
export function assertPieceName({ whole, at }: Pick<ProjectAt, 'whole' | 'at'>, name: string): void {
  const isTaken = whole.pieces.some((piece) => piece.id !== at.piece && piece.name.trim() === name.trim());
  if (isTaken) throw problemError('piece-name-taken', { name: name.trim() });
}

/** The first of the names, asked for one after the other from 1, that no piece has. */
export function freePieceName({ pieces }: Pick<Project, 'pieces'>, named: (again: number) => string): string {
  const taken = new Set(pieces.map(({ name }) => name.trim()));
  let again = 1;
  while (taken.has(named(again).trim())) again++;
  return named(again);
}

/**
 * A plain piece behind the one that is looked at, under an `id` that none had:
 * of the same yarn on the same machine, so its gauge and tension are the
 * same until it is given others. Throws `pieces-too-many`.
 */
export function addPiece(project: ProjectAt, name: string, id: PieceId): PiecesStep {
  const { gauge, tension, floatLimit, finishedFace, startSide, isInfant } = project.piece;
  const like = { gauge, tension, floatLimit, finishedFace, startSide, isInfant };
  const sizes = project.sizes.map((size) => size.id);
  return insertBehind(project, 'add-piece', pieceInSizes(id, { ...START_PIECE, ...like, name }, [], sizes));
}

/**
 * A copy of the piece that is looked at, behind it, under an `id` that none had;
 * `newPatternId` makes ids for the patterns on it. Throws `pieces-too-many`.
 */
export function duplicatePiece(
  project: ProjectAt,
  name: string,
  id: PieceId,
  newPatternId: () => PatternId,
): PiecesStep {
  const original = pieceOf(project.whole, project.at.piece);
  const patterns = original.patterns.map((pattern) => ({ ...pattern, id: newPatternId() }));
  return insertBehind(project, 'duplicate-piece', { ...original, id, name, patterns });
}

function insertBehind(project: ProjectAt, name: 'add-piece' | 'duplicate-piece', piece: PieceInSizes): PiecesStep {
  if (project.whole.pieces.length >= MOST_PIECES) throw problemError('pieces-too-many', { most: MOST_PIECES });
  return { change: changeOf(name, insertInto('pieces', currentPiece(project) + 1, piece)), shown: piece.id };
}

/** The piece that is looked at one place on (1) or back (−1); null at that end of the list. */
export function movePiece(project: ProjectAt, step: 1 | -1): Change | null {
  const to = currentPiece(project) + step;
  if (to < 0 || to >= project.whole.pieces.length) return null;
  return changeOf('move-piece', moveWithin('pieces', project.at.piece, to));
}

/** The list without the piece that is looked at, whose neighbour takes its place; null if it is the only one. */
export function removePiece(project: ProjectAt): PiecesStep | null {
  const { pieces } = project.whole;
  const at = currentPiece(project);
  const neighbour = pieces[at + 1] ?? pieces[at - 1];
  if (!neighbour) return null;
  return { change: changeOf('remove-piece', removeFrom('pieces', project.at.piece)), shown: neighbour.id };
}

/** So many of the piece that is looked at are knitted, 1 to {@link MOST_KNIT}; null where that changes nothing. */
export function knitTimes(project: ProjectAt, times: number): Change | null {
  const knit = Math.min(MOST_KNIT, Math.max(1, times));
  return knit === project.knit ? null : changeOf('knit-times', setPieceInSizes(project.at.piece, { knit }));
}
