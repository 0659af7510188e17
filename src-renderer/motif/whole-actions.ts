/** Commands that change the whole motif, each one step of undo. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../shell/actions/action.ts';
import type { Session } from '../shell/session.ts';
import type { MotifDesk } from './desk.ts';
import { WHOLE, WHOLE_NAMES, type WholeName } from './editing/whole.ts';

const KEYS: { readonly [Name in WholeName]: string } = {
  'mirror-across': 'Shift+H',
  'mirror-up': 'Shift+V',
  'quarter-turn': 'Shift+T',
  'shift-left': 'Shift+A',
  'shift-right': 'Shift+D',
  'shift-up': 'Shift+W',
  'shift-down': 'Shift+S',
  'insert-column': 'Shift+C',
  'delete-column': 'Shift+X',
  'insert-row': 'Shift+G',
  'delete-row': 'Shift+B',
  'exchange-yarns': 'Shift+E',
  invert: 'Shift+I',
  outline: 'Shift+O',
};

/**
 * Always at hand: working out beforehand whether one would change anything
 * takes as long as doing it. One that changes nothing says so.
 */
export function wholeActions(session: Session, desk: MotifDesk): Action[] {
  const text = words.motif.whole;
  return WHOLE_NAMES.map((name): Action => ({
    id: name,
    label: () => text.labels[name],
    keys: [KEYS[name]],
    isEnabled: () => true,
    run: () => {
      const { motif } = session;
      const change = WHOLE[name](motif, { cursor: desk.cursor, colour: desk.colour });
      if (change) session.change(change);
      session.announce(change ? text.done(text.labels[name]) : text.nothing);
    },
  }));
}
