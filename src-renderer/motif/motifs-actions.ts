/** Commands for the list of motifs. */
import type { MotifId } from '@shared/motif/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { motifOf, type Change } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { unless, type ActionsOf } from '../commands/command.ts';
import { newId } from '../session/new-id.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { addMotif, deleteMotif, duplicateMotif, motifBeside, type MotifsStep } from './editing/motifs.ts';
import { layLifted } from './lifted-selection.ts';
import { takeStamp } from './stamping.ts';

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
  /** What is lifted is part of what is kept, and of what a motif is put beside. */
  function open(dialog: 'collection' | 'keep'): void {
    layLifted(session, viewModel);
    viewModel.look({ dialog });
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
    collection: { run: () => open('collection') },
    'motif-keep': { run: () => open('keep') },
  };
}

/** Brings a motif into the project, on the bench or as what is stamped there, and says so. */
export function takeIn(
  session: Session,
  viewModel: MotifView,
  { change, id, said }: { readonly change: Change; readonly id: MotifId; readonly said: string },
  stamps: boolean,
): void {
  session.change(change);
  // Refused, which was said then.
  if (!session.project.motifs.some((motif) => motif.id === id)) return;
  if (stamps) takeStamp(session, viewModel, id);
  else session.look({ motif: id });
  session.announce(said);
}

/** Puts a motif of the project on the bench, after what is lifted is laid on the one that lies there. */
export function showMotif(session: Session, viewModel: MotifView, id: string): void {
  layLifted(session, viewModel);
  const { name, grid } = motifOf(session.project, id);
  session.look({ motif: id });
  session.announce(words.motifs.onBench(name, grid.width, grid.height));
}
