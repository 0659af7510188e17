/** Commands that walk the cells which break the near repeat. */
import type { Cell } from '@shared/grid/index.ts';
import type { Slip } from '@shared/motif/repeat/index.ts';
import { words } from '@shared/words/index.ts';
import type { ActionsOf } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { measuredFor } from './measured.ts';

export function slipActions(session: Session, viewModel: MotifView): ActionsOf<'slips'> {
  const text = words.understanding.slips;
  const walk = async (step: 1 | -1): Promise<void> => {
    const { grid } = session.motif;
    const measured = await measuredFor(session, { grid, ground: session.project.mainYarn });
    if (!measured || session.motif.grid !== grid) return;
    const { slips } = measured;
    const at = slipAfter(slips, viewModel.cursor, step);
    const slip = slips[at];
    if (!slip) {
      session.announce(text.none);
      return;
    }
    const { yarns } = session.project;
    const drawn = grid.cells[slip.row * grid.width + slip.column];
    viewModel.goTo({ column: slip.column, row: slip.row });
    const name = (yarn: number | undefined): string => yarns[yarn ?? -1]?.name ?? '';
    session.announce(text.at(at + 1, slips.length, slip.column, slip.row, name(drawn), name(slip.expected)));
  };
  return { 'slip-next': { run: () => walk(1) }, 'slip-before': { run: () => walk(-1) } };
}

/** Place in the list of the slip that comes after `cursor`, or before it, by row and column and round and round; -1 of none. */
export function slipAfter(slips: readonly Slip[], cursor: Cell, step: 1 | -1): number {
  const order = (cell: Cell): number => cell.row - cursor.row || cell.column - cursor.column;
  if (step === 1) {
    const next = slips.findIndex((slip) => order(slip) > 0);
    return next >= 0 || slips.length === 0 ? next : 0;
  }
  const before = slips.findLastIndex((slip) => order(slip) < 0);
  return before >= 0 ? before : slips.length - 1;
}
