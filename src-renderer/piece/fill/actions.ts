/** Commands that add and remove a fill, and move its pattern. */
import { isMirroredOnNeedles, MOST_STITCHES } from '@shared/bed/index.ts';
import { seamMatchingOf } from '@shared/fabric/seam-matching/index.ts';
import type { Fill } from '@shared/pattern/index.ts';
import { words } from '@shared/words/index.ts';
import { plainText } from '@shared/words/marked.ts';
import type { ActionsOf } from '../../commands/command.ts';
import { gestureOfPress } from '../../commands/keyboard.ts';
import type { Session } from '../../session/session.ts';
import { plannedOf } from '../planned.ts';
import { newId } from '../../session/new-id.ts';
import { addFill, changeOfFill, newFill, takeFillAway } from './fills.ts';

/** What the commands need of the bench: the fill in the form. */
export interface ChosenFill {
  fill: number;
}

/** Index of the chosen fill, or null if there is none. */
export function chosenFillOf({ fills }: { readonly fills: readonly unknown[] }, { fill }: ChosenFill): number | null {
  return fills.length === 0 ? null : Math.min(fill, fills.length - 1);
}

/** Adds a fill with the motif at hand and takes it into the form. */
export function fillPiece(session: Session, chosen: ChosenFill): void {
  session.change(addFill(session.current, newId(), newFill(session.motif.id, plannedOf(session.current).plan)));
  const last = session.current.fills.length - 1;
  chosen.fill = last;
  const placed = plannedOf(session.current).plan.fills[last];
  if (placed) session.announce(words.fill.added(placed.firstRow, placed.lastRow));
}

/** Removes the chosen fill. */
export function unfillPiece(session: Session, chosen: ChosenFill): void {
  const index = chosenFillOf(session.current, chosen);
  if (index === null) return;
  session.change(takeFillAway(session.current, index));
  chosen.fill = Math.max(0, index - 1);
  session.announce(words.fill.removed);
}

export function fillActions(session: Session, chosen: ChosenFill): ActionsOf<'fills'> {
  const text = words.fill;
  const hasFill = (): boolean => session.current.fills.length > 0;
  const gestureOf = gestureOfPress('fill-lie');

  /** A stitch to the right as shown, or to the left. */
  function move(step: 1 | -1, isHeld = false): void {
    const gesture = gestureOf(isHeld);
    const { current: project, view } = session;
    const index = chosenFillOf(project, chosen);
    if (index === null) return;
    const isTurned = isMirroredOnNeedles(view.pieceShows, project.piece.finishedFace);
    const shift = (project.fills[index] as Fill).shift + (isTurned ? -step : step);
    if (Math.abs(shift) > MOST_STITCHES) return;
    session.change(changeOfFill(project, index, 'fill-lie', { shift }), gesture);
    const { plan } = plannedOf(session.current);
    if (plan.fills[index]) session.announce(plainText(text.seam.summary(seamMatchingOf(plan, index))));
  }

  return {
    'fill-add': {
      label: () => words.commands['fill-add'](session.motif.name),
      run: () => fillPiece(session, chosen),
    },
    'fill-remove': { isEnabled: hasFill, run: () => unfillPiece(session, chosen) },
    'fill-left': { isEnabled: hasFill, run: (isHeld) => move(-1, isHeld) },
    'fill-right': { isEnabled: hasFill, run: (isHeld) => move(1, isHeld) },
  };
}
