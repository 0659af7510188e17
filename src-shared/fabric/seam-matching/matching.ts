/**
 * Where the two edges of a fill meet in the closed seam.
 *
 * The seam joins the last stitch that it leaves at the right edge to the first
 * that it leaves at the left: of one piece closed into a tube, or of two alike,
 * as a back and a front are. Each row is judged by its own period within the
 * repeat, since that is what the eye follows along it.
 */
import { modulo } from '../../grid/index.ts';
import { edgesAt, type Outline } from '../../piece/index.ts';
import { fillRun, tierOf } from '../fill-place.ts';
import type { PlacedFill, PlacedPatterns } from '../types.ts';
import { symmetriesOf, type RowSymmetry } from './row-symmetry.ts';

export type SeamMeeting =
  /** The pattern goes on across the seam as if there were none. */
  | { readonly kind: 'continues' }
  /** The seam is a mirror: what stands to its left is seen reversed to its right. */
  | { readonly kind: 'mirrors' }
  /**
   * Neither. So many stitches stand too many at the seam for the pattern to go
   * on (negative: too few), whichever is nearer; too many where both are as near.
   */
  | { readonly kind: 'off'; readonly by: number }
  /** The pattern ends before the seam at one or both edges: so many plain stitches lie along it. */
  | { readonly kind: 'plain'; readonly stitches: number };

/** Neighbouring rows that meet alike, counted as the rows of the piece. Rows of one yarn go with those around them. */
export interface SeamRun {
  readonly first: number;
  readonly last: number;
  readonly meeting: SeamMeeting;
}

export interface SeamMatching {
  /** Index 0 is the fill's first row. */
  readonly rows: readonly SeamMeeting[];
  readonly runs: readonly SeamRun[];
  /** Rows on which the pattern meets, either way; on which it is off; that are plain at the seam. */
  readonly matching: number;
  readonly off: number;
  readonly plain: number;
  /** Rows of one yarn, which go on wherever they are cut and show nothing of a seam. */
  readonly uniform: number;
}

/** How the edges of a fill meet, row by row. Throws `RangeError` for a fill that is not there. */
export function seamMatchingOf(
  { fills, outline }: Pick<PlacedPatterns, 'fills' | 'outline'>,
  fill: number,
): SeamMatching {
  const place = fills[fill];
  if (!place) throw new RangeError(`Fill ${fill} of ${fills.length}`);
  const rows = Array.from({ length: place.lastRow - place.firstRow + 1 }, (_, index) =>
    meetingOn(place, outline, place.firstRow + index),
  );
  const symmetries = symmetriesOf(place.copy);
  const isUniform = rows.map(
    ({ kind }, index) => kind === 'continues' && symmetries[index % place.copy.height]?.period === 1,
  );
  const uniform = isUniform.filter(Boolean).length;
  const count = (...kinds: SeamMeeting['kind'][]): number => rows.filter(({ kind }) => kinds.includes(kind)).length;
  return {
    rows,
    runs: runsOf(rows, isUniform, place.firstRow),
    matching: count('continues', 'mirrors') - uniform,
    off: count('off'),
    plain: count('plain'),
    uniform,
  };
}

const CONTINUES: SeamMeeting = { kind: 'continues' };
const MIRRORS: SeamMeeting = { kind: 'mirrors' };

/** How the edges of a fill meet on one row of the piece, which must be one of its rows. */
export function meetingOn(place: PlacedFill, outline: Outline, row: number): SeamMeeting {
  const edges = edgesAt(outline, row);
  const left = edges.first + place.seamAllowance.left;
  const right = edges.last - place.seamAllowance.right;
  const { first, last } = knittedEnds(place, outline, row);
  if (first > left || last < right || left > right) {
    const patterned = Math.max(0, Math.min(last, right) - Math.max(first, left) + 1);
    const seen = Math.max(0, right - left + 1);
    return { kind: 'plain', stitches: patterned === 0 ? seen : Math.max(0, first - left) + Math.max(0, right - last) };
  }
  const { copyRow, origin } = tierOf(place, row);
  const { period, mirrorSum } = symmetriesOf(place.copy)[copyRow] as RowSymmetry;
  const excess = modulo(right - left + 1, period);
  if (excess === 0) return CONTINUES;
  if (mirrorSum !== null && modulo(left + right - 2 * origin - mirrorSum, period) === 0) return MIRRORS;
  return { kind: 'off', by: 2 * excess <= period ? excess : excess - period };
}

/** First and last needle of the pattern on a row: those of its run, less the copies that are left out at its ends. */
function knittedEnds(
  place: PlacedFill,
  outline: Outline,
  row: number,
): { readonly first: number; readonly last: number } {
  const run = fillRun(place, outline, row);
  if (!run) return { first: Infinity, last: -Infinity };
  const { tier, origin } = tierOf(place, row);
  const leftOut = place.copies.without.get(tier);
  if (!leftOut) return run;
  const { width } = place.copy;
  let { first, last }: { first: number; last: number } = run;
  const at = (needle: number): number => Math.floor((needle - origin) / width);
  while (first <= last && leftOut.has(at(first))) first = origin + (at(first) + 1) * width;
  while (first <= last && leftOut.has(at(last))) last = origin + at(last) * width - 1;
  return { first, last };
}

function runsOf(rows: readonly SeamMeeting[], isUniform: readonly boolean[], firstRow: number): SeamRun[] {
  const runs: SeamRun[] = [];
  // Rows of one yarn at the bottom go with the first that is not.
  let first = firstRow;
  rows.forEach((meeting, index) => {
    const row = firstRow + index;
    const before = runs.at(-1);
    if (before && (isUniform[index] || isSameMeeting(before.meeting, meeting))) {
      runs[runs.length - 1] = { ...before, last: row };
    } else if (!isUniform[index] || index === rows.length - 1) {
      runs.push({ first, last: row, meeting });
    }
    first = runs.length === 0 ? firstRow : row + 1;
  });
  return runs;
}

function isSameMeeting(one: SeamMeeting, other: SeamMeeting): boolean {
  if (one.kind === 'off' && other.kind === 'off') return one.by === other.by;
  if (one.kind === 'plain' && other.kind === 'plain') return one.stitches === other.stitches;
  return one.kind === other.kind;
}
