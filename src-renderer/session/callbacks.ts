/** What components are given to change the project, and to say what came of it. */
import type { Change, ChangeName } from '@shared/project/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import type { Session } from './session.ts';

/** Makes a change of the project; those of one `gesture` make one step of undo. */
export type OnChange = (change: Change, gesture?: string | null) => void;

/** Gives the piece that is looked at other fields, in the size that is looked at. */
export type OnPiece = (name: ChangeName, to: Partial<Piece>, gesture?: string | null) => void;

/** Makes a change that was offered, and announces what came of it; null where it no longer fits, and nothing is made. */
export type OnMend = (change: Change | null, said: string) => void;

/** What makes the changes that are offered in a session. */
export function mending(session: Pick<Session, 'change' | 'announce'>): OnMend {
  return (change, said) => {
    if (!change) return;
    session.change(change);
    session.announce(said);
  };
}
