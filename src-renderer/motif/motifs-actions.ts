/** Commands for the list of motifs. */
import { outcome } from '@shared/problem/index.ts';
import { motifOf } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Action } from '../commands/action.ts';
import { newId } from '../session/new-id.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { addMotif, deleteMotif, duplicateMotif, motifBeside, type MotifsStep } from './editing/motifs.ts';
import { layLifted } from './lifted-selection.ts';

export function motifsActions(session: Session, viewModel: MotifView): Action[] {
  const text = words.motifs;
  const hasSeveral = (): boolean => session.project.motifs.length > 1;
  const always = (): boolean => true;

  /** Takes a step that may be refused, and says what lies on the bench then. */
  function take(step: () => MotifsStep, announcement: (name: string) => string): void {
    layLifted(session, viewModel);
    const taken = outcome(step);
    if (!taken.ok) {
      session.notify({ kind: 'problem', problem: taken.problem });
      return;
    }
    const { change, shown } = taken.value;
    session.change(change);
    session.look({ motif: shown });
    session.announce(announcement(session.motif.name));
  }
  function go(step: 1 | -1): void {
    showMotif(session, viewModel, motifBeside(session.project, session.motif.id, step));
  }

  return [
    {
      id: 'motif-add',
      label: () => text.commands.add,
      keys: ['Shift+N'],
      isEnabled: always,
      run: () =>
        take(() => {
          const { project, motif } = session;
          return addMotif(project, motif.id, text.newName(project.motifs.length + 1), newId());
        }, text.added),
    },
    {
      id: 'motif-duplicate',
      label: () => text.commands.duplicate,
      keys: ['Shift+P'],
      isEnabled: always,
      run: () =>
        take(() => {
          const { project, motif } = session;
          return duplicateMotif(project, motif.id, text.copyName(motif.name), newId());
        }, text.added),
    },
    {
      id: 'motif-delete',
      label: () => text.commands.remove,
      keys: ['Shift+Delete'],
      isEnabled: always,
      run: () => {
        const { name } = session.motif;
        take(
          () => deleteMotif(session.project, session.motif.id),
          (next) => text.removed(name, next),
        );
      },
    },
    { id: 'motif-next', label: () => text.commands.next, keys: ['.'], isEnabled: hasSeveral, run: () => go(1) },
    { id: 'motif-before', label: () => text.commands.before, keys: [','], isEnabled: hasSeveral, run: () => go(-1) },
  ];
}

/** Puts a motif of the project on the bench, after what is lifted is laid on the one that lies there. */
export function showMotif(session: Session, viewModel: MotifView, id: string): void {
  layLifted(session, viewModel);
  const { name, grid } = motifOf(session.project, id);
  session.look({ motif: id });
  session.announce(words.motifs.onBench(name, grid.width, grid.height));
}
