/** The command that closes the piece into its tube, and lays it open again. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../../commands/action.ts';
import type { Session } from '../../session/session.ts';

export function closedAction(session: Session, viewModel: { isClosed: boolean }): Action {
  const text = words.closed;
  return {
    id: 'closed',
    label: () => text.command,
    keys: ['C'],
    isEnabled: () => true,
    isOn: () => viewModel.isClosed,
    run: () => {
      viewModel.isClosed = !viewModel.isClosed;
      const { finishedFace } = session.current.piece;
      session.announce(viewModel.isClosed ? text.caption(finishedFace, text.turned(0)) : text.laidOpen);
    },
  };
}
