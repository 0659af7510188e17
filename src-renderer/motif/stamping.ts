/** Stamping on the bench: a copy of another motif floats under the pointer or the cursor until it is laid. */
import type { Cell } from '@shared/grid/index.ts';
import type { Motif } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../shell/session.ts';
import type { MotifDesk } from './desk.ts';
import { layChange } from './editing/cutting.ts';
import { overhangOf } from './editing/overhang.ts';
import { centredOn, stampOf } from './editing/stamp.ts';
import { changeAndTell } from './floating.ts';
import type { Press } from './stage/hand.ts';

const text = words.motifs.stamp;

/** The motifs that can be stamped: all but the one on the bench. */
export function stampable({ project, motif }: Session): readonly Motif[] {
  return project.motifs.filter(({ id }) => id !== motif.id);
}

/** The motif that the stamp lays, or null where the project has no other. */
export function stampedMotif(session: Session, desk: MotifDesk): Motif | null {
  const others = stampable(session);
  return others.find(({ id }) => id === desk.state.stamp.motif) ?? others[0] ?? null;
}

/** Lets the stamp float with its middle on a cell. */
export function floatStamp(session: Session, desk: MotifDesk, under: Cell): void {
  const motif = stampedMotif(session, desk);
  if (!motif) return;
  const cells = stampOf(motif, desk.state.stamp.isFigureOnly);
  desk.look({ floating: { name: 'stamp', cells, at: centredOn(cells, under) } });
}

/** The pointer came to a cell: with the stamp in hand, the copy goes there, turned as it was. */
export function moveStamp(session: Session, desk: MotifDesk, to: Cell): void {
  const { tool, floating } = desk.state;
  if (tool !== 'stamp') return;
  if (floating?.name === 'stamp') desk.look({ floating: { ...floating, at: centredOn(floating.cells, to) } });
  else floatStamp(session, desk, to);
}

/** Lays the copy, which goes on floating for the next one: one step of undo. Lets it float first if none does. */
export function layStamp(session: Session, desk: MotifDesk): void {
  const { floating } = desk.state;
  if (floating?.name !== 'stamp') {
    floatStamp(session, desk, desk.cursor);
    session.announce(desk.state.floating ? text.floats : text.noOther);
    return;
  }
  const { motif } = session;
  const overhang = overhangOf(motif.grid, motif.ground, floating);
  changeAndTell(session, desk, layChange(motif, floating), overhang);
  session.announce(text.laid);
}

/** The pointer goes down with the stamp in hand: the copy follows it and is laid where it is let go. */
export function pressStamp(session: Session, desk: MotifDesk, first: Cell): Press {
  let last = first;
  const go = (to: Cell): void => {
    last = to;
    moveStamp(session, desk, to);
  };
  go(first);
  return {
    over: (cells) => go(cells.at(-1) ?? last),
    end: () => {
      layStamp(session, desk);
      return last;
    },
    giveUp: () => desk.look({ floating: null }),
  };
}

/** Stamps another motif, or only its figure; what floats is changed at once. */
export function changeStamp(session: Session, desk: MotifDesk, to: Partial<MotifDesk['state']['stamp']>): void {
  const { floating, stamp } = desk.state;
  desk.look({ stamp: { ...stamp, ...to } });
  const motif = stampedMotif(session, desk);
  if (!motif || floating?.name !== 'stamp') return;
  desk.look({ floating: { ...floating, cells: stampOf(motif, desk.state.stamp.isFigureOnly) } });
}
