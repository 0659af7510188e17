/** The command that opens the dialog for letters. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../../commands/action.ts';
import type { MotifView } from '../view-state.ts';

export function letteringAction(viewModel: MotifView): Action {
  return {
    id: 'lettering',
    label: () => words.lettering.command,
    keys: ['A'],
    isEnabled: () => true,
    run: () => viewModel.look({ dialog: 'lettering' }),
  };
}
