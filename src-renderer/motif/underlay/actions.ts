/** Commands for the picture to trace, each one step of undo. */
import { problemOf } from '@shared/problem/index.ts';
import { LEAST_OPACITY, type Motif } from '@shared/motif/index.ts';
import type { Change } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { shownKeys, unless, type ActionsOf } from '../../commands/command.ts';
import type { Session } from '../../session/session.ts';
import type { MotifView } from '../view-state.ts';
import { underlayKeeper } from '../parts.ts';
import { layUnderlay, removeUnderlay, scaleUnderlay, strengthenUnderlay, toggleUnderlay } from './placing.ts';

const text = words.underlay;

/** One press of a command: 2 % larger, a tenth stronger. */
const SCALE_STEP = 1.02;
const OPACITY_STEP = 0.1;

export function underlayActions(session: Session, viewModel: MotifView): ActionsOf<'underlay'> {
  const hasOne = (): boolean => session.motif.underlay !== null;
  const stepOf = (change: (motif: Motif) => Change | null, announcement: () => string) => ({
    whyNot: unless(hasOne, words.whyNot.noPicture),
    run: () => {
      const made = change(session.motif);
      if (made) session.change(made);
      session.announce(announcement());
    },
  });
  const scaled = (by: number) => (motif: Motif) => scaleUnderlay(motif, by);
  const size = (): string => {
    const { columns = 0, rows = 0 } = session.motif.underlay ?? {};
    return text.sizeIs(columns, rows);
  };
  const stronger = (by: number) => (motif: Motif) =>
    strengthenUnderlay(motif, Math.max(LEAST_OPACITY, (motif.underlay?.opacity ?? 0) + by));
  const strength = (): string => text.strengthIs(session.motif.underlay?.opacity ?? 0);
  return {
    'underlay-add': {
      label: () => words.commands['underlay-add'](hasOne()),
      run: () => chooseUnderlay(session, viewModel),
    },
    'underlay-remove': stepOf(removeUnderlay, () => text.removed),
    'underlay-shown': {
      ...stepOf(toggleUnderlay, () => (session.motif.underlay?.isShown ? text.shown : text.hidden)),
      isOn: () => session.motif.underlay?.isShown ?? false,
    },
    'underlay-larger': stepOf(scaled(SCALE_STEP), size),
    'underlay-smaller': stepOf(scaled(1 / SCALE_STEP), size),
    'underlay-stronger': stepOf(stronger(OPACITY_STEP), strength),
    'underlay-fainter': stepOf(stronger(-OPACITY_STEP), strength),
  };
}

/** What is said where there is no picture, with the shortcut that adds one if it acts. */
export function noUnderlayYet(): string {
  return text.noneYet(shownKeys('underlay-add') ?? null);
}

/** Asks for a picture file and lays it behind the motif on the bench. */
async function chooseUnderlay(session: Session, viewModel: MotifView): Promise<void> {
  const { id } = session.motif;
  const { opened } = session;
  const chosen = await viewModel.choosePicture();
  if (!chosen) return;
  session.announce(text.reading);
  try {
    const { keptPicture } = await underlayKeeper();
    const kept = await keptPicture(chosen.bytes, chosen.name);
    // The project may have left the table meanwhile, or the motif the project.
    if (opened !== session.opened || !session.project.motifs.some((motif) => motif.id === id)) return;
    session.change(layUnderlay(session.project, id, kept, viewModel.aspect));
    session.announce(text.laid);
  } catch (thrown) {
    session.notify({ kind: 'problem', problem: problemOf(thrown) });
  }
}
