/** Commands for the stamp: which motif it lays, and how much of it. */
import { words } from '@shared/words/index.ts';
import { unless, type ActionsOf } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { changeStamp, stampable, stampedMotif } from './stamping.ts';

export function stampActions(session: Session, viewModel: MotifView): ActionsOf<'stamp'> {
  const text = words.motifs.stamp;
  return {
    'stamp-next': {
      whyNot: unless(() => stampable(session).length > 0, words.whyNot.nothingToStamp),
      run: () => {
        const motifs = stampable(session);
        const at = motifs.findIndex(({ id }) => id === stampedMotif(session, viewModel)?.id);
        const next = motifs[(at + 1) % motifs.length];
        if (!next) return;
        changeStamp(session, viewModel, { motif: next.id });
        session.announce(text.taken(next.name));
      },
    },
    'stamp-figure-only': {
      isOn: () => viewModel.state.stamp.isFigureOnly,
      run: () => {
        const isFigureOnly = !viewModel.state.stamp.isFigureOnly;
        changeStamp(session, viewModel, { isFigureOnly });
        session.announce(isFigureOnly ? words.commands['stamp-figure-only'] : text.allCells);
      },
    },
  };
}
