/** Commands for the list of pieces. Which one is looked at is the view's; all else is a change of the project. */
import { outcome } from '@shared/problem/index.ts';
import {
  addPiece,
  currentPiece,
  duplicatePiece,
  knitTimes,
  movePiece,
  pieceOf,
  removePiece,
  type PieceId,
  type PiecesStep,
} from '@shared/project/index.ts';
import { MOST_NAME_LETTERS } from '@shared/piece/index.ts';
import { words } from '@shared/words/index.ts';
import { gestureOfPress, type Action } from '../../commands/action.ts';
import { newId } from '../../session/new-id.ts';
import type { Session } from '../../session/session.ts';

/** Letters that the name of a copy has more than that of its original, at most. */
const COPY_LETTERS = 10;

export function piecesActions(session: Session): Action[] {
  const text = words.pieces;
  const pressMark = gestureOfPress('knit-times');
  const hasSeveral = (): boolean => session.project.pieces.length > 1;

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
  const move = (id: string, label: string, keys: string, step: 1 | -1): Action => ({
    id,
    label: () => label,
    keys: [keys],
    isEnabled: () => movePiece(session.current, step) !== null,
    run: () => {
      const change = movePiece(session.current, step);
      if (!change) return;
      session.change(change);
      const { current } = session;
      session.announce(text.moved(current.piece.name, currentPiece(current) + 1, current.whole.pieces.length));
    },
  });
  const knit = (id: string, label: string, keys: string, by: 1 | -1): Action => ({
    id,
    label: () => label,
    keys: [keys],
    isEnabled: () => knitTimes(session.current, session.current.knit + by) !== null,
    run: (isHeld = false) => changeKnit(session, session.current.knit + by, pressMark(isHeld)),
  });

  return [
    {
      id: 'piece-add',
      label: () => text.commands.add,
      keys: ['Shift+N'],
      isEnabled: () => true,
      run: () => bring(() => addPiece(session.current, freshName(session, text.newName), newId())),
    },
    {
      id: 'piece-duplicate',
      label: () => text.commands.duplicate,
      keys: ['Shift+P'],
      isEnabled: () => true,
      run: () =>
        bring(() => {
          const name = session.current.piece.name.slice(0, MOST_NAME_LETTERS - COPY_LETTERS);
          const called = freshName(session, (_, again) => text.copyName(name, again));
          return duplicatePiece(session.current, called, newId(), newId);
        }),
    },
    move('piece-left', text.commands.left, '<', -1),
    move('piece-right', text.commands.right, '>', 1),
    {
      id: 'piece-remove',
      label: () => text.commands.remove,
      keys: ['Shift+Backspace'],
      isEnabled: hasSeveral,
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
    { id: 'piece-next', label: () => text.commands.next, keys: ['N'], isEnabled: hasSeveral, run: () => go(1) },
    { id: 'piece-before', label: () => text.commands.before, keys: ['P'], isEnabled: hasSeveral, run: () => go(-1) },
    knit('piece-knit-more', text.commands.more, 'M', 1),
    knit('piece-knit-fewer', text.commands.fewer, 'L', -1),
  ];
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

/** The first of the names that no piece has: `named` is given the number of the piece, and how often it was asked. */
function freshName({ project }: Session, named: (number: number, again: number) => string): string {
  const taken = new Set(project.pieces.map(({ name }) => name));
  for (let again = 1; ; again++) {
    const name = named(project.pieces.length + again, again);
    if (!taken.has(name)) return name;
  }
}
