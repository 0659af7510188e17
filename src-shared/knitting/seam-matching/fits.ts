/** What would make all rows of a fill meet in the seam. */
import { modulo } from '../../grid/index.ts';
import { outlineOf, widened, type Outline } from '../../piece/index.ts';
import { outcome } from '../../problem/index.ts';
import { applyChange, changeOf, type Change } from '../../project/change.ts';
import { setFill, setPiece } from '../../project/edit-makers.ts';
import type { Fill, Project } from '../../project/project.ts';
import { layFill, type LaidFill } from '../fills.ts';
import { makePlan } from '../plan.ts';
import type { Plan } from '../types.ts';
import { meetingOn, seamMatchingOf } from './matching.ts';

/** A change after which every row meets, and by how many stitches it goes. */
export interface SeamFit {
  /** Stitches fewer or more on every row, or stitches to the left or right; negative for fewer and left. */
  readonly by: number;
  readonly change: Change;
}

/** The nearest of each kind; null where none makes all rows meet. */
export interface SeamFits {
  readonly fewer: SeamFit | null;
  readonly more: SeamFit | null;
  readonly shift: SeamFit | null;
}

const NONE: SeamFits = { fewer: null, more: null, shift: null };

/**
 * The nearest stitch counts (every row of the shape wider or narrower by the
 * same number, still on the bed and with all else in its place) and the
 * nearest shift at which every row that reaches the seam meets in one of the
 * two ways. All null if nothing is off. `plan` is that of `project`.
 *
 * Twice a copy's width in either direction is all there is to try: then both
 * edges stand by one whole copy further out, and everything comes again.
 */
export function seamFits(project: Project, plan: Plan, fill: number): SeamFits {
  const now = seamMatchingOf(plan, fill);
  if (now.off === 0) return NONE;
  const { width } = (plan.fills[fill] as Plan['fills'][number]).copy;
  const isFit = (change: Change, outline: Outline): boolean => {
    const laid = outcome(() => layFill(applyChange(project, change), fill, outline, plan.extents));
    if (!laid.ok || !isMet(laid.value, outline, now.plain)) return false;
    const after = outcome(() => makePlan(applyChange(project, change)));
    return after.ok && (!leavesBed(after.value) || leavesBed(plan));
  };
  const nearest = (sign: 1 | -1): SeamFit | null => {
    for (let stitches = 1; stitches <= 2 * width; stitches++) {
      const by = sign * stitches;
      const shape = widened(project.piece.shape, by);
      if (!shape) continue;
      const outline = outcome(() => outlineOf(shape, project.piece));
      const change = changeOf('match-seam', setPiece({ shape }));
      if (outline.ok && isFit(change, outline.value)) return { by, change };
    }
    return null;
  };
  return { fewer: nearest(-1), more: nearest(1), shift: nearestShift(project, fill, width, plan.outline, isFit) };
}

function nearestShift(
  project: Project,
  index: number,
  width: number,
  outline: Outline,
  isFit: (change: Change, outline: Outline) => boolean,
): SeamFit | null {
  const { shift } = project.fills[index] as Fill;
  for (let stitches = 1; stitches < width; stitches++) {
    for (const by of [stitches, -stitches]) {
      const to = nearestTo0(shift + by, width);
      const change = changeOf('match-seam', setFill(index, { shift: to }));
      if (isFit(change, outline)) return { by, change };
    }
  }
  return null;
}

/** A shift by whole copies shows nothing: the one of them that is nearest to none. */
function nearestTo0(shift: number, width: number): number {
  const right = modulo(shift, width);
  return right * 2 <= width ? right : right - width;
}

function leavesBed({ findings }: Plan): boolean {
  return findings.some(({ code }) => code === 'wider-than-bed');
}

/** True if no row is off, and no more of them are plain than were. */
function isMet({ place, copies }: LaidFill, outline: Outline, plainBefore: number): boolean {
  let plain = 0;
  for (let row = place.firstRow; row <= place.lastRow; row++) {
    const { kind } = meetingOn(place, copies, outline, row);
    if (kind === 'off') return false;
    if (kind === 'plain') plain++;
  }
  return plain <= plainBefore;
}
