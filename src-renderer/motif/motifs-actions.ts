/** Commands for the list of motifs. */
import { outcome } from '@shared/problem/index.ts';
import { motifOf } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { unless, type ActionsOf } from '../commands/command.ts';
import { newId } from '../session/new-id.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { addMotif, deleteMotif, duplicateMotif, motifBeside, type MotifsStep } from './editing/motifs.ts';
import { layLifted } from './lifted-selection.ts';

export function motifsActions(session: Session, viewModel: MotifView): ActionsOf<'motifs'> {
  const text = words.motifs;
  const whyNot = unless(() => session.project.motifs.length > 1, words.whyNot.oneMotif);

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

  return {
    'motif-add': {
      run: () =>
        take(() => {
          const { project, motif } = session;
          return addMotif(project, motif.id, text.newName(project.motifs.length + 1), newId());
        }, text.added),
    },
    'motif-duplicate': {
      run: () =>
        take(() => {
          const { project, motif } = session;
          return duplicateMotif(project, motif.id, text.copyName(motif.name), newId());
        }, text.added),
    },
    'motif-delete': {
      run: () => {
        const { name } = session.motif;
        take(
          () => deleteMotif(session.project, session.motif.id),
          (next) => text.removed(name, next),
        );
      },
    },
    'motif-next': { whyNot, run: () => go(1) },
    'motif-before': { whyNot, run: () => go(-1) },
  };
}

/** Puts a motif of the project on the bench, after what is lifted is laid on the one that lies there. */
export function showMotif(session: Session, viewModel: MotifView, id: string): void {
  layLifted(session, viewModel);
  const { name, grid } = motifOf(session.project, id);
  session.look({ motif: id });
  session.announce(words.motifs.onBench(name, grid.width, grid.height));
}
