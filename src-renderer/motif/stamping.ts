/** Stamping on the bench: a copy of another motif follows under the pointer or the cursor until it is laid. */
import type { Cell } from '@shared/grid/index.ts';
import type { Motif, MotifId } from '@shared/motif/index.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { layChange } from './editing/cutting.ts';
import { overhangOf } from './editing/overhang.ts';
import { centredOn, stampOf } from './editing/stamp.ts';
import { changeAndTell } from './lifted-selection.ts';

/** A press of the pointer, until it is let go. */
export interface Press {
  /** The pointer went on over these cells. */
  over(cells: readonly Cell[]): void;
  /** Let go; gives the last cell. */
  end(): Cell;
  /** Takes back what the press did. */
  giveUp(): void;
}

const text = words.motifs.stamp;

/** The motifs that can be stamped: all but the one on the bench. */
export function stampable({ project, motif }: Session): readonly Motif[] {
  return project.motifs.filter(({ id }) => id !== motif.id);
}

/** The motif that the stamp lays, or null where the project has no other. */
export function stampedMotif(session: Session, viewModel: MotifView): Motif | null {
  const others = stampable(session);
  return others.find(({ id }) => id === viewModel.state.stamp.motif) ?? others[0] ?? null;
}

/** Holds the stamp over the chart with its middle on a cell. */
export function holdStamp(session: Session, viewModel: MotifView, under: Cell): void {
  const motif = stampedMotif(session, viewModel);
  if (!motif) return;
  const cells = stampOf(motif.grid, session.project.mainYarn, viewModel.state.stamp.isFigureOnly);
  viewModel.look({ lifted: { name: 'stamp', cells, at: centredOn(cells, under) } });
}

/** Takes the stamp of a motif in hand, at the cursor of the keyboard. */
export function takeStamp(session: Session, viewModel: MotifView, motif: MotifId): void {
  const { stamp } = viewModel.state;
  viewModel.look({ tool: 'stamp', span: null, selection: null, stamp: { ...stamp, motif } });
  holdStamp(session, viewModel, viewModel.cursor);
  viewModel.focusStage();
}

/** The pointer came to a cell: with the stamp in hand, the copy goes there, turned as it was. */
export function moveStamp(session: Session, viewModel: MotifView, to: Cell): void {
  const { tool, lifted } = viewModel.state;
  if (tool !== 'stamp') return;
  if (lifted?.name === 'stamp') viewModel.look({ lifted: { ...lifted, at: centredOn(lifted.cells, to) } });
  else holdStamp(session, viewModel, to);
}

/** Lays the copy, which stays for the next one: one step of undo. Takes it up first if none is. */
export function layStamp(session: Session, viewModel: MotifView): void {
  const { lifted } = viewModel.state;
  if (lifted?.name !== 'stamp') {
    holdStamp(session, viewModel, viewModel.cursor);
    session.announce(viewModel.state.lifted ? text.held : text.noOther);
    return;
  }
  const { motif, project } = session;
  const overhang = overhangOf(motif.grid, project.mainYarn, lifted);
  changeAndTell(session, viewModel, layChange(motif, project.mainYarn, lifted), overhang);
  session.announce(text.laid);
}

/** The pointer goes down with the stamp in hand: the copy follows it and is laid where it is let go. */
export function pressStamp(session: Session, viewModel: MotifView, first: Cell): Press {
  let last = first;
  const go = (to: Cell): void => {
    last = to;
    moveStamp(session, viewModel, to);
  };
  go(first);
  return {
    over: (cells) => go(cells.at(-1) ?? last),
    end: () => {
      layStamp(session, viewModel);
      return last;
    },
    giveUp: () => viewModel.look({ lifted: null }),
  };
}

/** Stamps another motif, or only its figure; what is lifted is changed at once. */
export function changeStamp(session: Session, viewModel: MotifView, to: Partial<MotifView['state']['stamp']>): void {
  const { lifted, stamp } = viewModel.state;
  viewModel.look({ stamp: { ...stamp, ...to } });
  const motif = stampedMotif(session, viewModel);
  if (!motif || lifted?.name !== 'stamp') return;
  viewModel.look({
    lifted: { ...lifted, cells: stampOf(motif.grid, session.project.mainYarn, viewModel.state.stamp.isFigureOnly) },
  });
}
