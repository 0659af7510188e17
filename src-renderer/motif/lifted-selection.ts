/** Selecting, cutting, copying and laying on the bench. What is selected or lifted is no part of the project. */
import { cellAt, type Cell, type Grid } from '@shared/grid/index.ts';
import { words } from '@shared/words/index.ts';
import { shownKeys } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import type { Change } from '@shared/project/index.ts';
import { overhangOf, type Overhang } from './editing/overhang.ts';
import {
  asLettering,
  cutAgain,
  cutBox,
  cutChange,
  cutColour,
  layChange,
  makesLettering,
  OPEN,
  type Cutting,
  type LiftedSelection,
} from './editing/cutting.ts';

const text = words.motif.select;

/** Selects a cutting and says how large it is; null selects nothing. */
export function select(session: Session, viewModel: MotifView, selection: Cutting | null): void {
  viewModel.look({ selection });
  session.announce(
    selection ? text.selected(selection.cells.width, selection.cells.height, shownKeys('lift') ?? null) : text.nothing,
  );
}

export function selectAll(session: Session, viewModel: MotifView): void {
  layLifted(session, viewModel);
  const { grid } = session.motif;
  select(session, viewModel, cutBox(grid, { column: 0, row: 0 }, { column: grid.width - 1, row: grid.height - 1 }));
}

/** Selects all cells of the colour at the cursor, and says how many they are. */
export function selectColour(session: Session, viewModel: MotifView): void {
  layLifted(session, viewModel);
  const { grid } = session.motif;
  const { column, row } = viewModel.cursor;
  const colour = cellAt(grid, column, row);
  const selection = cutColour(grid, colour);
  if (!selection) return select(session, viewModel, null);
  viewModel.look({ selection });
  const { width, height, cells } = selection.cells;
  const many = cells.filter((cell) => cell !== OPEN).length;
  const name = session.yarns[colour]?.name ?? '';
  session.announce(text.selectedYarn(many, name, width, height, shownKeys('lift') ?? null));
}

/** Keeps what is lifted or selected for pasting. */
export function copy(session: Session, viewModel: MotifView): void {
  const { selection, lifted } = viewModel.state;
  const kept = lifted ?? (selection && cutAgain(session.motif.grid, selection));
  if (!kept) return;
  viewModel.look({ clipping: kept.cells });
  session.announce(text.copied);
}

/** Keeps what is lifted or selected for pasting, and clears it. */
export function cut(session: Session, viewModel: MotifView): void {
  copy(session, viewModel);
  giveToGround(session, viewModel, 'cut');
  session.announce(text.cut);
}

/** Gives what is selected to the ground. Lifted cells go, and leave the ground where they were lifted from. */
export function clear(session: Session, viewModel: MotifView): void {
  const { project } = session;
  const wasLifted = viewModel.state.lifted !== null;
  giveToGround(session, viewModel, 'erase');
  // Ground alone was selected.
  const isNothing = session.project === project && !wasLifted;
  session.announce(isNothing ? words.motif.whole.nothing : text.cleared);
}

function giveToGround(session: Session, viewModel: MotifView, name: 'cut' | 'erase'): void {
  const { selection, lifted } = viewModel.state;
  const cleared = lifted?.name === 'move' ? lifted.from : selection;
  const change = cleared && cutChange(session.motif, session.project.mainYarn, cleared, name);
  viewModel.look({ selection: null, lifted: null });
  if (change) session.change(change);
}

/** Holds what is kept over the chart, where something is selected or at the cursor. */
export function paste(session: Session, viewModel: MotifView): void {
  layLifted(session, viewModel);
  const { clipping, selection } = viewModel.state;
  if (!clipping) return;
  hold(session, viewModel, { name: 'paste', cells: clipping, at: selection?.at ?? viewModel.cursor });
}

/** Holds cells over the chart and gives it the keyboard; what was lifted before is laid first. */
export function hold(session: Session, viewModel: MotifView, lifted: LiftedSelection): void {
  layLifted(session, viewModel);
  viewModel.look({ tool: 'select', span: null, selection: null, lifted });
  viewModel.focusStage();
  session.announce(text.lifted);
}

/** Lifts what is selected, to be moved. */
export function lift(session: Session, viewModel: MotifView): void {
  const lifted = liftedFrom(session, viewModel);
  if (lifted) hold(session, viewModel, lifted);
}

function liftedFrom(session: Session, viewModel: MotifView): LiftedSelection | null {
  const { selection } = viewModel.state;
  if (!selection) return null;
  const taken = cutAgain(session.motif.grid, selection);
  return { ...taken, name: 'move', from: taken };
}

/** Moves what is lifted; gives what is said of it then. */
export function moveLifted(viewModel: MotifView, columns: number, rows: number): string {
  const { lifted } = viewModel.state;
  if (!lifted) return '';
  const at: Cell = { column: lifted.at.column + columns, row: lifted.at.row + rows };
  viewModel.look({ lifted: { ...lifted, at } });
  return text.at(at.column, at.row);
}

/**
 * Moves what is lifted, or is selected and lifted for it, so that its lower left
 * cell comes to `at`, and says so. The keyboard stays where it is.
 */
export function moveTo(session: Session, viewModel: MotifView, at: Cell): void {
  const held = viewModel.state.lifted ?? liftedFrom(session, viewModel);
  if (!held) return;
  // What is selected and stays where it is need not be lifted.
  if (at.column !== held.at.column || at.row !== held.at.row) {
    viewModel.look({ span: null, selection: null, lifted: { ...held, at } });
  }
  session.announce(text.at(at.column, at.row));
}

/** Gives up what is lifted, is selected, or is being drawn; false if there is nothing. */
export function giveUpAll(session: Session, viewModel: MotifView): boolean {
  const { span, lifted, selection } = viewModel.state;
  if (!span && !lifted && !selection) return false;
  viewModel.look({ span: null, lifted: null, selection: null });
  session.announce(words.motif.shapes.givenUp);
  return true;
}

/** Mirrors or turns what is lifted; false if nothing is. */
export function turnLifted(viewModel: MotifView, turn: (cells: Grid) => Grid): boolean {
  const { lifted } = viewModel.state;
  if (!lifted) return false;
  const turned = { ...lifted, cells: turn(lifted.cells) };
  viewModel.look({ lifted: turned.name === 'lettering' ? { ...turned, reads: false } : turned });
  return true;
}

/** Makes a change that leaves off what lies over the edge, and says on the chart what that was. */
export function changeAndTell(
  session: Session,
  viewModel: MotifView,
  change: Change | null,
  overhang: Overhang | null,
  gesture: string | null = null,
): void {
  const before = session.project;
  if (change) session.change(change, gesture);
  const { project } = session;
  viewModel.look({ leftOff: overhang && { project, overhang, canUndo: project !== before } });
}

/** Lays down what is lifted: one step of undo. A stamp is laid by the stamp alone; anything else puts it away. */
export function layLifted(session: Session, viewModel: MotifView): boolean {
  const { lifted } = viewModel.state;
  if (!lifted) return false;
  if (lifted.name === 'stamp') {
    viewModel.look({ lifted: null });
    return false;
  }
  const { motif, project } = session;
  const change = layChange(motif, project.mainYarn, lifted);
  const areLetters = makesLettering(motif, lifted);
  const overhang = overhangOf(motif.grid, project.mainYarn, lifted);
  viewModel.look({ lifted: null });
  changeAndTell(session, viewModel, change && areLetters ? asLettering(motif, change) : change, overhang);
  session.announce(text.laid);
  // The chart, where it is told, is not in view.
  if (overhang && session.view.bench !== 'motif') {
    session.notify({ kind: 'done', text: words.motif.overhang.leftOff(overhang, change !== null) });
  }
  return true;
}
