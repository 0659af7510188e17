/** What would make all rows of an all-over match in the seam. */
import { isBroken, meetingOn, placeAllOver, seamMatchingOf, type PlacedAllOver } from '../fabric/index.ts';
import { atCarriage, outlineOf, type Outline } from '../piece/index.ts';
import { makePlan, type Plan } from '../plan/index.ts';
import { allOversOf } from '../pattern/index.ts';
import { outcome } from '../problem/index.ts';
import type { KnitAllOver, KnitPiece } from '../project/index.ts';
import { pieceAfter, type Intent } from './intent.ts';

/** What is to be done for every row to match, and by how many stitches it goes. */
export interface SeamFit {
  /** Stitches fewer or more on every row; negative for fewer. */
  readonly by: number;
  readonly intent: Intent;
}

/** The nearest of each kind; null where none makes all rows match. */
export interface SeamFits {
  readonly fewer: SeamFit | null;
  readonly more: SeamFit | null;
}

const NONE: SeamFits = { fewer: null, more: null };

/**
 * The nearest stitch counts (every row of the shape wider or narrower by the
 * same number, still on the bed and with all else in its place) at which the
 * pattern goes on across the seam on every row that reaches it. Both null if it
 * does. Moving the pattern is no help: what stands beyond the seam is moved by
 * the stitches of the row, wherever the pattern begins. `allOver` is of `plan`, and that of `piece`.
 *
 * Twice a copy's width in either direction is all there is to try: then both
 * edges stand by one whole copy further out, and everything comes again.
 */
export function seamFits(piece: KnitPiece, plan: Plan, allOver: PlacedAllOver): SeamFits {
  const now = seamMatchingOf(allOver, plan.outline);
  if (!isBroken(now)) return NONE;
  const { number, copy } = allOver;
  const isFit = (intent: Intent): boolean => {
    const then = pieceAfter(piece, intent);
    if (!then) return false;
    const outline = outlineAfter(piece, plan, then);
    if (!outline) return false;
    const asked = allOversOf(then)[number] as KnitAllOver;
    const placed = outcome(() => placeAllOver(then, asked, number, { ...plan, outline }));
    if (!placed.ok || !isMet(placed.value, outline, now.plain)) return false;
    const after = outcome(() => makePlan(then));
    return after.ok && (after.value.beyondBed === null || plan.beyondBed !== null);
  };
  const nearest = (sign: 1 | -1): SeamFit | null => {
    for (let stitches = 1; stitches <= 2 * copy.width; stitches++) {
      const by = sign * stitches;
      const intent: Intent = { code: 'widen', by };
      if (isFit(intent)) return { by, intent };
    }
    return null;
  };
  return { fewer: nearest(-1), more: nearest(1) };
}

/** The outline of the piece as changed, of which the shape alone may be another; null where it has none. */
function outlineAfter(before: KnitPiece, plan: Plan, after: KnitPiece): Outline | null {
  if (after.shape === before.shape) return plan.outline;
  const outline = outcome(() => atCarriage(outlineOf(after.shape, after), after));
  return outline.ok ? outline.value : null;
}

/** True if every row goes on or is plain, and no more of them are plain than were. */
function isMet(allOver: PlacedAllOver, outline: Outline, plainBefore: number): boolean {
  let plain = 0;
  for (let row = allOver.firstRow; row <= allOver.lastRow; row++) {
    const { kind } = meetingOn(allOver, outline, row);
    if (kind === 'plain') plain++;
    else if (kind !== 'continues') return false;
  }
  return plain <= plainBefore;
}
