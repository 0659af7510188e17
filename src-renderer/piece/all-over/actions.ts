/** Commands that add and remove an all-over, and move it. */
import { isMirroredOnNeedles } from '@shared/bed/index.ts';
import { seamMatchingOf } from '@shared/fabric/seam-matching/index.ts';
import { allOversOf, type AllOver } from '@shared/pattern/index.ts';
import { boundsOf, changeOf, insertPattern, removePattern, setPattern, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { plainText } from '@shared/words/marked.ts';
import { unless, type ActionsOf } from '../../commands/command.ts';
import { gestureOfPress } from '../../commands/keyboard.ts';
import type { Session } from '../../session/session.ts';
import { plannedOf } from '../planned.ts';
import { newId } from '../../session/new-id.ts';
import { newAllOver, wholeAllOver } from './all-overs.ts';

/** What the commands need of the bench: the all-over in the form. */
export interface ChosenAllOver {
  allOver: number;
  /** It has just come: the panel brings it into view. */
  isAllOverNew: boolean;
}

/** Number of the chosen all-over, or null if there is none. */
export function chosenAllOverOf(
  project: Pick<ProjectAt, 'patterns'>,
  { allOver }: Pick<ChosenAllOver, 'allOver'>,
): number | null {
  const many = allOversOf(project).length;
  return many === 0 ? null : Math.min(allOver, many - 1);
}

/** Adds an all-over with the motif at hand and takes it into the form. */
function addAllOver(session: Session, chosen: ChosenAllOver): void {
  const before = session.current;
  const allOver = newAllOver(session.motif.id, plannedOf(before).plan);
  session.change(changeOf('add-all-over', insertPattern(before, newId(), allOver)));
  chooseNew(session, chosen);
  const placed = allOversOf(plannedOf(session.current).plan)[chosen.allOver];
  if (placed) session.announce(words.allOver.added(placed.firstRow, placed.lastRow));
}

/** Takes the last one, which has just come, into the form. */
function chooseNew(session: Session, chosen: ChosenAllOver): void {
  chosen.allOver = allOversOf(session.current).length - 1;
  chosen.isAllOverNew = true;
}

/** Puts an all-over on the whole piece, in place of what stands in its rows, as one step. */
function replaceByAllOver(session: Session, chosen: ChosenAllOver): void {
  const before = session.current;
  const whole = wholeAllOver(session.motif.id, plannedOf(before).plan);
  session.change(
    changeOf(
      'replace-by-all-over',
      insertPattern(before, newId(), whole.allOver),
      ...whole.standing.map(({ kind, number }) => removePattern(before, kind, number)),
    ),
  );
  chooseNew(session, chosen);
  session.announce(words.allOver.replaced(whole.standing, whole.firstRow, whole.lastRow));
}

/** Removes the chosen all-over. */
function removeAllOver(session: Session, chosen: ChosenAllOver): void {
  const number = chosenAllOverOf(session.current, chosen);
  if (number === null) return;
  session.change(changeOf('remove-all-over', removePattern(session.current, 'all-over', number)));
  chosen.allOver = Math.max(0, number - 1);
  session.announce(words.allOver.removed);
}

export function allOverActions(session: Session, chosen: ChosenAllOver): ActionsOf<'all-overs'> {
  const text = words.allOver;
  const whyNot = unless(() => chosenAllOverOf(session.current, chosen) !== null, words.whyNot.noAllOver);
  const gestureOf = gestureOfPress('all-over-lie');

  /** A stitch to the right as shown, or to the left. */
  function move(step: 1 | -1, isHeld = false): void {
    const gesture = gestureOf(isHeld);
    const { current: project, view } = session;
    const number = chosenAllOverOf(project, chosen);
    if (number === null) return;
    const isTurned = isMirroredOnNeedles(view.pieceShows, project.piece.finishedFace);
    const shift = (allOversOf(project)[number] as AllOver).shift + (isTurned ? -step : step);
    const { least, most } = boundsOf('allOverShift');
    if (shift < least || shift > most) return;
    session.change(changeOf('all-over-lie', setPattern(project, 'all-over', number, { shift })), gesture);
    const { plan } = plannedOf(session.current);
    const placed = allOversOf(plan)[number];
    if (placed) session.announce(plainText(text.seam.summary(seamMatchingOf(placed, plan.outline))));
  }

  return {
    'all-over-add': {
      label: () => words.commands['all-over-add'](session.motif.name),
      run: () => addAllOver(session, chosen),
    },
    'all-over-replace': {
      label: () => words.commands['all-over-replace'](session.motif.name),
      whyNot: unless(
        () => wholeAllOver(session.motif.id, plannedOf(session.current).plan).standing.length > 0,
        words.whyNot.nothingInItsRows,
      ),
      run: () => replaceByAllOver(session, chosen),
    },
    'all-over-remove': { whyNot, run: () => removeAllOver(session, chosen) },
    'all-over-left': { whyNot, run: (isHeld) => move(-1, isHeld) },
    'all-over-right': { whyNot, run: (isHeld) => move(1, isHeld) },
  };
}
