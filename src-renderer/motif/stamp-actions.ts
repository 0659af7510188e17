/** Commands for the stamp: which motif it lays, and how much of it. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../commands/action.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { changeStamp, stampable, stampedMotif } from './stamping.ts';

export function stampActions(session: Session, viewModel: MotifView): Action[] {
  const text = words.motifs.stamp;
  return [
    {
      id: 'stamp-next',
      label: () => text.next,
      keys: ['B'],
      isEnabled: () => stampable(session).length > 0,
      run: () => {
        const motifs = stampable(session);
        const at = motifs.findIndex(({ id }) => id === stampedMotif(session, viewModel)?.id);
        const next = motifs[(at + 1) % motifs.length];
        if (!next) return;
        changeStamp(session, viewModel, { motif: next.id });
        session.announce(text.taken(next.name));
      },
    },
    {
      id: 'stamp-figure-only',
      label: () => text.figureOnly,
      keys: ['Shift+Z'],
      isEnabled: () => true,
      isOn: () => viewModel.state.stamp.isFigureOnly,
      run: () => {
        const isFigureOnly = !viewModel.state.stamp.isFigureOnly;
        changeStamp(session, viewModel, { isFigureOnly });
        session.announce(isFigureOnly ? text.figureOnly : text.allCells);
      },
    },
  ];
}
