/** Commands about sizes: the table of all, and going from one to the next. */
import { goToSize, currentSize, sizesOf } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Action } from '../../commands/action.ts';
import type { Session } from '../../session/session.ts';

export function sizeActions(session: Session, viewModel: { showsSizes: boolean }): Action[] {
  const text = words.sizes.commands;
  const step = (id: string, label: string, keys: string, by: 1 | -1): Action => {
    const index = (): number => currentSize(session.project) + by;
    return {
      id,
      label: () => label,
      keys: [keys],
      isEnabled: () => sizesOf(session.project)[index()] !== undefined,
      run: () => {
        session.change(goToSize(session.project, index()));
        session.announce(words.sizes.wentTo(session.project.sizes.name));
      },
    };
  };
  return [
    {
      id: 'sizes',
      label: () => text.table,
      keys: ['S'],
      isEnabled: () => true,
      run: () => void (viewModel.showsSizes = true),
    },
    step('size-smaller', text.smaller, '[', -1),
    step('size-larger', text.larger, ']', 1),
  ];
}
