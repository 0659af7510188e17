/** Commands about sizes: the table of all, and going from one to the next. */
import { currentSize } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { unless, type ActionsOf } from '../../commands/command.ts';
import type { Session } from '../../session/session.ts';

export function sizeActions(session: Session, viewModel: { showsSizes: boolean }): ActionsOf<'sizes'> {
  const step = (by: 1 | -1) => {
    const size = () => session.project.sizes[currentSize(session.current) + by];
    return {
      whyNot: unless(() => size() !== undefined, by < 0 ? words.whyNot.smallestSize : words.whyNot.largestSize),
      run: () => {
        const to = size();
        if (!to) return;
        session.look({ size: to.id });
        session.announce(words.sizes.wentTo(to.name));
      },
    };
  };
  return {
    sizes: { run: () => void (viewModel.showsSizes = true) },
    'size-smaller': step(-1),
    'size-larger': step(1),
  };
}
