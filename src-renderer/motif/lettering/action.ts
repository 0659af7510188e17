/** The command that opens the dialog for letters. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../../shell/actions/action.ts';
import type { MotifDesk } from '../desk.ts';

export function letteringAction(desk: MotifDesk): Action {
  return {
    id: 'lettering',
    label: () => words.lettering.command,
    keys: ['A'],
    isEnabled: () => true,
    run: () => desk.look({ dialog: 'lettering' }),
  };
}
