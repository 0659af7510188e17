/** Commands for selected and floating cells. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../shell/actions/action.ts';
import type { Session } from '../shell/session.ts';
import type { MotifDesk } from './desk.ts';
import { copy, cut, lift, paste, selectAll, selectColour } from './floating.ts';

export function selectActions(session: Session, desk: MotifDesk): Action[] {
  const text = words.motif.select.commands;
  const always = (): boolean => true;
  const isSelected = (): boolean => desk.state.selection !== null;
  const action = (id: string, label: string, keys: string, isEnabled: () => boolean, run: () => void): Action => ({
    id,
    label: () => label,
    keys: [keys],
    isEnabled,
    run,
  });
  return [
    action('select-all', text.all, 'Mod+A', always, () => selectAll(session, desk)),
    action('select-colour', text.colour, 'Shift+L', always, () => selectColour(session, desk)),
    action('lift', text.lift, 'M', isSelected, () => lift(session, desk)),
    action(
      'copy',
      text.copy,
      'Mod+C',
      () => isSelected() || desk.state.floating !== null,
      () => copy(session, desk),
    ),
    action('cut', text.cut, 'Mod+X', isSelected, () => cut(session, desk)),
    action(
      'paste',
      text.paste,
      'Mod+V',
      () => desk.state.clipping !== null,
      () => paste(session, desk),
    ),
  ];
}
