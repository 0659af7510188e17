/** Commands and answers for the cells that a reading was not sure of. */
import type { Cell } from '@shared/grid/index.ts';
import { words } from '@shared/words/index.ts';
import { unless, type ActionsOf } from '../../commands/command.ts';
import type { Session } from '../../session/session.ts';
import { paintChange } from '../editing/strokes.ts';
import { slipAfter } from '../slip-actions.ts';
import type { MotifView } from '../view-state.ts';
import type { CellToSettle } from './doubts.ts';

export function doubtActions(session: Session, viewModel: MotifView): ActionsOf<'doubts'> {
  const text = words.doubts;
  const whyNot = unless(() => cellsOf(viewModel).length > 0, text.none);
  const walk = (step: 1 | -1): void => {
    const next = doubtAfter(viewModel, step);
    if (!next) return;
    viewModel.goTo(next.cell);
    session.announce(said(session, viewModel, next));
  };
  return {
    'doubt-next': { whyNot, run: () => walk(1) },
    'doubt-before': { whyNot, run: () => walk(-1) },
    'doubt-as-read': {
      whyNot,
      run: () => {
        const here = cellsOf(viewModel).find(({ cell }) => isSame(cell, viewModel.cursor));
        if (!here) return session.announce(text.notHere);
        viewModel.state.doubts?.takeAsRead(here.doubt);
        const next = doubtAfter(viewModel, 1);
        if (next) viewModel.goTo(next.cell);
        session.announce(next ? said(session, viewModel, next) : text.done);
      },
    },
  };
}

/** Looks at a cell to settle; the keyboard stays where it is. */
export function lookAtDoubt(session: Session, viewModel: MotifView, cell: CellToSettle): void {
  viewModel.show(cell.cell);
  session.announce(said(session, viewModel, cell));
}

/** The cell is of this yarn: painted where it is another, or right as it was read. The next one is looked at. */
export function settleDoubt(session: Session, viewModel: MotifView, { doubt, cell }: CellToSettle, yarn: number): void {
  const { motif } = session;
  const change = paintChange(motif, 'settle-cell', yarn, [cell.row * motif.grid.width + cell.column]);
  if (change) session.change(change);
  else viewModel.state.doubts?.takeAsRead(doubt);
  const next = doubtAfter(viewModel, 1);
  if (next) lookAtDoubt(session, viewModel, next);
  else session.announce(words.doubts.done);
}

/** Asks again about the last one that was right as read, and looks at it. */
export function askAgain(session: Session, viewModel: MotifView): void {
  const doubt = viewModel.state.doubts?.bringBack() ?? null;
  const cell = cellsOf(viewModel).find((open) => open.doubt === doubt);
  if (cell) lookAtDoubt(session, viewModel, cell);
}

/** The one after the cursor, or before it, round and round; undefined if there is none. */
function doubtAfter(viewModel: MotifView, step: 1 | -1): CellToSettle | undefined {
  const cells = cellsOf(viewModel).toSorted((a, b) => a.cell.row - b.cell.row || a.cell.column - b.cell.column);
  return cells[
    slipAfter(
      cells.map(({ cell }) => cell),
      viewModel.cursor,
      step,
    )
  ];
}

function said(session: Session, viewModel: MotifView, { doubt, cell, sure }: CellToSettle): string {
  const cells = cellsOf(viewModel);
  const { grid } = session.motif;
  const yarn = session.yarns[grid.cells[cell.row * grid.width + cell.column] ?? -1]?.name ?? '';
  const at = cells.findIndex((other) => other.doubt === doubt);
  return words.doubts.at(at + 1, cells.length, cell.column, cell.row, yarn, sure);
}

function cellsOf(viewModel: MotifView): readonly CellToSettle[] {
  return viewModel.state.doubts?.now?.cells ?? [];
}

function isSame(a: Cell, b: Cell): boolean {
  return a.column === b.column && a.row === b.row;
}
