/** What the pointer does to cells that are selected or lifted: it drags them, or puts them where the chart is pressed. */
import type { Cell } from '@shared/grid/index.ts';
import type { Session } from '../../session/session.ts';
import type { Cutting } from '../editing/cutting.ts';
import { lift, moveLifted, moveTo } from '../lifted-selection.ts';
import type { Press } from '../stamping.ts';
import type { MotifView } from '../view-state.ts';

export const isSame = (a: Cell, b: Cell): boolean => a.column === b.column && a.row === b.row;

interface Hold {
  readonly from: Cell;
  readonly held: Cutting;
  /** The cell of it that was pressed before, to go where the chart is pressed next. */
  readonly grip: Cell | null;
}

/** The pointer drags what is lifted; what is selected is lifted by the first move. A mere press puts it, or is told as `taken`. */
export function dragHeld(session: Session, viewModel: MotifView, { from, held, grip }: Hold, taken: () => void): Press {
  let last = from;
  let isDrag = false;
  return {
    over: (cells) => {
      const to = cells.at(-1) ?? last;
      if (isSame(to, last)) return;
      isDrag = true;
      if (viewModel.state.selection) lift(session, viewModel);
      moveLifted(viewModel, to.column - last.column, to.row - last.row);
      last = to;
    },
    end: () => {
      if (!isDrag && grip) putHeld(session, viewModel, held, grip, from);
      else if (!isDrag) taken();
      return last;
    },
    giveUp: () => moveLifted(viewModel, from.column - last.column, from.row - last.row),
  };
}

/** Moves what is held so that its cell `grip` comes to another one. */
export function putHeld(session: Session, viewModel: MotifView, { at }: Cutting, grip: Cell, to: Cell): void {
  moveTo(session, viewModel, { column: at.column + to.column - grip.column, row: at.row + to.row - grip.row });
}
