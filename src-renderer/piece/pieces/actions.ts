/** Commands for the list of pieces. Which one is looked at is the view's; all else is a change of the project. */
import { outcome } from '@shared/problem/index.ts';
import {
  addPiece,
  currentPiece,
  duplicatePiece,
  freePieceName,
  knitTimes,
  movePiece,
  pieceOf,
  removePiece,
  type PieceId,
  type PiecesStep,
} from '@shared/project/index.ts';
import { MOST_NAME_LETTERS } from '@shared/piece/index.ts';
import { words } from '@shared/words/index.ts';
import { unless, type ActionsOf } from '../../commands/command.ts';
import { gestureOfPress } from '../../commands/keyboard.ts';
import { newId } from '../../session/new-id.ts';
import type { Session } from '../../session/session.ts';

/** Letters that the name of a copy has more than that of its original, at most. */
const COPY_LETTERS = 10;

export function piecesActions(session: Session): ActionsOf<'pieces'> {
  const text = words.pieces;
  const pressMark = gestureOfPress('knit-times');
  const whyNot = unless(() => session.project.pieces.length > 1, words.whyNot.onePiece);

  /** Takes a step that may be refused, and looks at the piece that it brings. */
  function bring(step: () => PiecesStep): void {
    const taken = outcome(step);
    if (!taken.ok) {
      session.notify({ kind: 'problem', problem: taken.problem });
      return;
    }
    session.change(taken.value.change);
    lookAtPiece(session, taken.value.shown);
  }
  function go(step: 1 | -1): void {
    const { pieces } = session.project;
    const to = pieces[(currentPiece(session.current) + step + pieces.length) % pieces.length];
    if (to) lookAtPiece(session, to.id);
  }
  const move = (step: 1 | -1) => ({
    whyNot: unless(
      () => movePiece(session.current, step) !== null,
      step < 0 ? words.whyNot.firstPiece : words.whyNot.lastPiece,
    ),
    run: () => {
      const change = movePiece(session.current, step);
      if (!change) return;
      session.change(change);
      const { current } = session;
      session.announce(text.moved(current.piece.name, currentPiece(current) + 1, current.whole.pieces.length));
    },
  });
  const knit = (by: 1 | -1) => ({
    whyNot: unless(
      () => knitTimes(session.current, session.current.knit + by) !== null,
      by > 0 ? words.whyNot.knitMost : words.whyNot.knitLeast,
    ),
    run: (isHeld = false) => changeKnit(session, session.current.knit + by, pressMark(isHeld)),
  });

  return {
    'piece-add': {
      run: () =>
        bring(() =>
          addPiece(
            session.current,
            freePieceName(session.project, (again) => text.newName(session.project.pieces.length + again)),
            newId(),
          ),
        ),
    },
    'piece-duplicate': {
      run: () =>
        bring(() => {
          const name = session.current.piece.name.slice(0, MOST_NAME_LETTERS - COPY_LETTERS);
          const called = freePieceName(session.project, (again) => text.copyName(name, again));
          return duplicatePiece(session.current, called, newId(), newId);
        }),
    },
    'piece-left': move(-1),
    'piece-right': move(1),
    'piece-remove': {
      whyNot,
      run: () => {
        const step = removePiece(session.current);
        if (!step) return;
        const { name } = session.current.piece;
        // The neighbour first, so that no third piece is looked at in between.
        session.look({ piece: step.shown });
        session.change(step.change);
        session.announce(text.removed(name, session.current.piece.name));
      },
    },
    'piece-next': { whyNot, run: () => go(1) },
    'piece-before': { whyNot, run: () => go(-1) },
    'piece-knit-more': knit(1),
    'piece-knit-fewer': knit(-1),
  };
}

/** Looks at another piece of the project. */
export function lookAtPiece(session: Session, id: PieceId): void {
  session.look({ piece: id });
  session.announce(words.pieces.lookedAt(pieceOf(session.project, id).name));
}

/** Says how many are knitted of the piece that is looked at. */
export function changeKnit(session: Session, times: number, gesture: string): void {
  const change = knitTimes(session.current, times);
  if (!change) return;
  session.change(change, gesture);
  session.announce(words.pieces.knit(session.current.piece.name, session.current.knit));
}
