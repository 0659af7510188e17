/** Commands about sizes: the table of all, and going from one to the next. */
import { currentSize } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Action } from '../../commands/action.ts';
import type { Session } from '../../session/session.ts';

export function sizeActions(session: Session, viewModel: { showsSizes: boolean }): Action[] {
  const text = words.sizes.commands;
  const step = (id: string, label: string, keys: string, by: 1 | -1): Action => {
    const size = () => session.project.sizes[currentSize(session.current) + by];
    return {
      id,
      label: () => label,
      keys: [keys],
      isEnabled: () => size() !== undefined,
      run: () => {
        const to = size();
        if (!to) return;
        session.look({ size: to.id });
        session.announce(words.sizes.wentTo(to.name));
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
