/** Commands for selected and lifted cells. */
import { actionsFor, type ActionsOf } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { copy, cut, giveUpAll, layLifted, lift, moveTo, paste, selectAll, selectColour } from './lifted-selection.ts';
import { isSeenTurned } from './stage/turned.ts';

/** Columns to the right and rows up. */
const STEPS = { left: [-1, 0], right: [1, 0], up: [0, 1], down: [0, -1] } satisfies {
  readonly [Way in string]: [number, number];
};

export function selectActions(session: Session, viewModel: MotifView): ActionsOf<'selection'> {
  const isSelected = (): boolean => viewModel.state.selection !== null;
  const isHeld = (): boolean => isSelected() || viewModel.state.lifted !== null;
  /** `across`: columns to the right as the chart is shown. */
  const step = (across: number, up: number): void => {
    const held = viewModel.state.lifted ?? viewModel.state.selection;
    if (!held) return;
    const columns = isSeenTurned(session, viewModel.state.fabric) ? -across : across;
    moveTo(session, viewModel, { column: held.at.column + columns, row: held.at.row + up });
  };
  return {
    'select-all': { run: () => selectAll(session, viewModel) },
    'select-colour': { run: () => selectColour(session, viewModel) },
    lift: { isEnabled: isSelected, run: () => lift(session, viewModel) },
    copy: { isEnabled: isHeld, run: () => copy(session, viewModel) },
    cut: { isEnabled: isSelected, run: () => cut(session, viewModel) },
    paste: { isEnabled: () => viewModel.state.clipping !== null, run: () => paste(session, viewModel) },
    ...actionsFor(
      ['left', 'right', 'up', 'down'],
      (way) => `select-${way}` as const,
      (way) => ({ isEnabled: isHeld, run: () => step(...STEPS[way]) }),
    ),
    'select-lay': {
      isEnabled: () => viewModel.state.lifted !== null,
      run: () => void layLifted(session, viewModel),
    },
    'select-give-up': { isEnabled: isHeld, run: () => void giveUpAll(session, viewModel) },
  };
}
