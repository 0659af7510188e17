/** Commands for selected and lifted cells. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../commands/action.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { copy, cut, giveUpAll, layLifted, lift, moveTo, paste, selectAll, selectColour } from './lifted-selection.ts';
import { isSeenTurned } from './stage/turned.ts';

type Way = 'left' | 'right' | 'up' | 'down';

/** Columns to the right and rows up. */
const STEPS: { readonly [Each in Way]: readonly [across: number, up: number] } = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, 1],
  down: [0, -1],
};

export function selectActions(session: Session, viewModel: MotifView): Action[] {
  const text = words.motif.select.commands;
  const always = (): boolean => true;
  const isSelected = (): boolean => viewModel.state.selection !== null;
  const isHeld = (): boolean => isSelected() || viewModel.state.lifted !== null;
  /** `across`: columns to the right as the chart is shown. */
  const step = (across: number, up: number): void => {
    const held = viewModel.state.lifted ?? viewModel.state.selection;
    if (!held) return;
    const columns = isSeenTurned(session, viewModel.state.fabric) ? -across : across;
    moveTo(session, viewModel, { column: held.at.column + columns, row: held.at.row + up });
  };
  const moves = (id: Way, key: string): Action => ({
    id: `select-${id}`,
    label: () => text[id],
    // What is lifted goes with the arrow keys alone, too.
    keys: [`Shift+${key}`],
    isEnabled: isHeld,
    run: () => step(...STEPS[id]),
  });
  const action = (id: string, label: string, keys: string, isEnabled: () => boolean, run: () => void): Action => ({
    id,
    label: () => label,
    keys: [keys],
    isEnabled,
    run,
  });
  return [
    action('select-all', text.all, 'Mod+A', always, () => selectAll(session, viewModel)),
    action('select-colour', text.colour, 'Shift+L', always, () => selectColour(session, viewModel)),
    action('lift', text.lift, 'M', isSelected, () => lift(session, viewModel)),
    action('copy', text.copy, 'Mod+C', isHeld, () => copy(session, viewModel)),
    action('cut', text.cut, 'Mod+X', isSelected, () => cut(session, viewModel)),
    action(
      'paste',
      text.paste,
      'Mod+V',
      () => viewModel.state.clipping !== null,
      () => paste(session, viewModel),
    ),
    moves('left', 'ArrowLeft'),
    moves('right', 'ArrowRight'),
    moves('up', 'ArrowUp'),
    moves('down', 'ArrowDown'),
    {
      id: 'select-lay',
      label: () => text.lay,
      keys: ['Enter'],
      isEnabled: () => viewModel.state.lifted !== null,
      run: () => void layLifted(session, viewModel),
    },
    {
      id: 'select-give-up',
      label: () => text.giveUp,
      keys: ['Escape'],
      isEnabled: isHeld,
      run: () => void giveUpAll(session, viewModel),
    },
  ];
}
