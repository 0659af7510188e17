/** What would make all rows of a fill meet in the seam. */
import { meetingOn, placeFill, seamMatchingOf, type PlacedFill } from '../fabric/index.ts';
import { outlineOf, type Outline } from '../piece/index.ts';
import { makePlan, type Plan } from '../plan/index.ts';
import { outcome } from '../problem/index.ts';
import { applyChange, pieceIn, type Project } from '../project/index.ts';
import { changeFor, type Intent } from './intent.ts';

/** What is to be done for every row to meet, and by how many stitches it goes. */
export interface SeamFit {
  /** Stitches fewer or more on every row, or stitches to the left or right; negative for fewer and left. */
  readonly by: number;
  readonly intent: Intent;
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
  const { width } = (plan.fills[fill] as PlacedFill).copy;
  const isFit = (intent: Intent): boolean => {
    const change = changeFor(project, intent);
    if (!change) return false;
    const then = applyChange(project, change);
    const outline = outlineAfter(project, plan, then);
    const placed = outline && outcome(() => placeFill(pieceIn(then), fill, outline, plan.extents));
    if (!placed?.ok || !isMet(placed.value, outline as Outline, now.plain)) return false;
    const after = outcome(() => makePlan(pieceIn(then)));
    return after.ok && (after.value.beyondBed === null || plan.beyondBed !== null);
  };
  const nearest = (most: number, signs: readonly number[], intentOf: (by: number) => Intent): SeamFit | null => {
    for (let stitches = 1; stitches <= most; stitches++) {
      for (const sign of signs) {
        const by = sign * stitches;
        if (isFit(intentOf(by))) return { by, intent: intentOf(by) };
      }
    }
    return null;
  };
  const widen = (by: number): Intent => ({ code: 'widen', by });
  return {
    fewer: nearest(2 * width, [-1], widen),
    more: nearest(2 * width, [1], widen),
    shift: nearest(width - 1, [1, -1], (by) => ({ code: 'shift-fill', fill, by })),
  };
}

/** The outline of the piece as changed, or null where it has none. */
function outlineAfter(before: Project, plan: Plan, after: Project): Outline | null {
  if (after.piece === before.piece) return plan.outline;
  const outline = outcome(() => outlineOf(after.piece.shape, after.piece));
  return outline.ok ? outline.value : null;
}

/** True if no row is off, and no more of them are plain than were. */
function isMet(fill: PlacedFill, outline: Outline, plainBefore: number): boolean {
  let plain = 0;
  for (let row = fill.firstRow; row <= fill.lastRow; row++) {
    const { kind } = meetingOn(fill, outline, row);
    if (kind === 'off') return false;
    if (kind === 'plain') plain++;
  }
  return plain <= plainBefore;
}
