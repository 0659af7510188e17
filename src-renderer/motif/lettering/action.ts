/** The command that opens the dialog for letters. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../../commands/action.ts';
import type { MotifViewModel } from '../view-model.ts';

export function letteringAction(viewModel: MotifViewModel): Action {
  return {
    id: 'lettering',
    label: () => words.lettering.command,
    keys: ['A'],
    isEnabled: () => true,
    run: () => viewModel.look({ dialog: 'lettering' }),
  };
}
