/** Commands for selected and lifted cells. */
import { actionsFor, unless, type ActionsOf } from '../commands/command.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import {
  clear,
  copy,
  cut,
  giveUpAll,
  layLifted,
  lift,
  moveTo,
  paste,
  selectAll,
  selectColour,
} from './lifted-selection.ts';
import { isSeenTurned } from './stage/turned.ts';

/** Columns to the right and rows up. */
const STEPS = { left: [-1, 0], right: [1, 0], up: [0, 1], down: [0, -1] } satisfies {
  readonly [Way in string]: [number, number];
};

export function selectActions(session: Session, viewModel: MotifView): ActionsOf<'selection'> {
  const text = words.whyNot;
  const isSelected = (): boolean => viewModel.state.selection !== null;
  const isLifted = (): boolean => viewModel.state.lifted !== null;
  const whyNot = unless(() => isSelected() || isLifted(), text.nothingSelected);
  /** `across`: columns to the right as the chart is shown. */
  const step = (across: number, up: number): void => {
    const held = viewModel.state.lifted ?? viewModel.state.selection;
    if (!held) return;
    const columns = isSeenTurned(session.motif, session.piece, viewModel.state.fabric) ? -across : across;
    moveTo(session, viewModel, { column: held.at.column + columns, row: held.at.row + up });
  };
  return {
    'select-all': { run: () => selectAll(session, viewModel) },
    'select-colour': { run: () => selectColour(session, viewModel) },
    lift: { whyNot: unless(isSelected, text.nothingSelected), run: () => lift(session, viewModel) },
    copy: { whyNot, run: () => copy(session, viewModel) },
    cut: { whyNot, run: () => cut(session, viewModel) },
    'select-clear': { whyNot, run: () => clear(session, viewModel) },
    paste: {
      whyNot: unless(() => viewModel.state.clipping !== null, text.nothingCopied),
      run: () => paste(session, viewModel),
    },
    ...actionsFor(
      ['left', 'right', 'up', 'down'],
      (way) => `select-${way}` as const,
      (way) => ({ whyNot, run: () => step(...STEPS[way]) }),
    ),
    'select-lay': {
      whyNot: unless(isLifted, text.nothingLifted),
      run: () => void layLifted(session, viewModel),
    },
    'select-give-up': { whyNot, run: () => void giveUpAll(session, viewModel) },
  };
}
