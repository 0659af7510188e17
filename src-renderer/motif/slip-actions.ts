/** Commands that walk the cells which break the near repeat, and settle which of its copies is right. */
import type { Cell } from '@shared/grid/index.ts';
import type { Measure, NearRepeat } from '@shared/motif/repeat/index.ts';
import { words } from '@shared/words/index.ts';
import type { ActionsOf } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import { askedPlace, settleChange } from './editing/differing-copies.ts';
import type { MotifView } from './view-state.ts';
import { isMeasuredAtOnce, measuredFor, measureOf } from './measured.ts';

export function slipActions(session: Session, viewModel: MotifView): ActionsOf<'slips'> {
  const text = words.understanding.slips;
  const whyNot = noSlips(session);
  /** The measure of the drawing; null where it cannot be had, or another was drawn meanwhile. */
  const measured = async (): Promise<Measure | null> => {
    const { grid } = session.motif;
    const found = await measuredFor(session, { grid, ground: session.project.mainYarn });
    return session.motif.grid === grid ? found : null;
  };
  const walk = async (step: 1 | -1): Promise<void> => {
    const found = await measured();
    if (!found) return;
    const { grid } = session.motif;
    const { slips } = found;
    const at = slipAfter(slips, viewModel.cursor, step);
    const slip = slips[at];
    if (!slip) {
      session.announce(text.none);
      return;
    }
    const { yarns } = session.project;
    const drawn = grid.cells[slip.row * grid.width + slip.column];
    viewModel.goTo({ column: slip.column, row: slip.row });
    const name = (yarn: number | null | undefined): string => yarns[yarn ?? -1]?.name ?? '';
    session.announce(
      slip.expected === null
        ? text.atOpen(at + 1, slips.length, slip.column, slip.row, name(drawn))
        : text.at(at + 1, slips.length, slip.column, slip.row, name(drawn), name(slip.expected)),
    );
  };
  const settle = async (which: 'this' | 'other'): Promise<void> => {
    const found = await measured();
    if (!found) return;
    const { grid } = session.motif;
    const asked = askedPlace(grid, found, viewModel.cursor);
    if (!asked) {
      session.announce(text.none);
      return;
    }
    const { column, row } = isCopyOf(asked.near, asked.cell, viewModel.cursor) ? viewModel.cursor : asked.cell;
    const here = grid.cells[row * grid.width + column];
    const chosen = asked.versions.find(({ colour }) => (colour === here) === (which === 'this'));
    if (chosen) settleAsked(session, asked.near, asked.cell, chosen.colour);
  };
  return {
    'slip-next': { whyNot, run: () => walk(1) },
    'slip-before': { whyNot, run: () => walk(-1) },
    'slip-keep': { whyNot, run: () => settle('this') },
    'slip-take': { whyNot, run: () => settle('other') },
  };
}

/** Why there is nothing to walk or to settle, or by itself to mend. Of a large drawing it is not known before a command asks. */
export function noSlips(session: Session, isMending = false): () => string | null {
  const text = words.understanding.slips;
  return () => {
    const drawing = { grid: session.motif.grid, ground: session.project.mainYarn };
    if (!isMeasuredAtOnce(drawing)) return null;
    const { slips } = measureOf(drawing);
    if (slips.length === 0) return text.none;
    return isMending && slips.every(({ expected }) => expected === null) ? text.choose : null;
  };
}

/** Makes all copies of a cell alike, one step of undo, and says so. */
export function settleAsked(session: Session, near: NearRepeat, cell: Cell, colour: number): void {
  const change = settleChange(session.motif, near, cell, colour);
  if (!change) return;
  session.change(change);
  const name = session.project.yarns[colour]?.name ?? '';
  session.announce(words.understanding.slips.settled(cell.column, cell.row, name));
}

function isCopyOf(near: NearRepeat, cell: Cell, other: Cell): boolean {
  return (cell.column - other.column) % near.width === 0 && (cell.row - other.row) % near.height === 0;
}

/** Place in the list of the slip that comes after `cursor`, or before it, by row and column and round and round; -1 of none. */
export function slipAfter(slips: readonly Cell[], cursor: Cell, step: 1 | -1): number {
  const order = (cell: Cell): number => cell.row - cursor.row || cell.column - cursor.column;
  if (step === 1) {
    const next = slips.findIndex((slip) => order(slip) > 0);
    return next >= 0 || slips.length === 0 ? next : 0;
  }
  const before = slips.findLastIndex((slip) => order(slip) < 0);
  return before >= 0 ? before : slips.length - 1;
}
