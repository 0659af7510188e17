/**
 * Where the two edges of an all-over meet in the closed seam.
 *
 * The seam joins the last stitch that it leaves at the right edge to the first
 * that it leaves at the left: of one piece closed into a tube, or of two alike,
 * as a back and a front are. Walked on over the seam, all that stands beyond it
 * is the pattern moved by the stitches that are seen of the row.
 *
 * A row goes on across the seam where that move changes nothing that is seen
 * there: not the row itself, and neither of the rows right below and above it,
 * as far as they reach the seam and do not go on by themselves on their own
 * stitches. So a row that repeats sooner than its neighbours does not match by
 * itself where they jump; a row does not lose its match because shaping puts
 * the next one off; and two equal stitches side by side are no match: bars of
 * 2 stitches at both edges make one of 4, which the pattern does not have.
 *
 * It is the pattern that is judged. Edge needles that end-needle selection
 * brings in knit contrast whatever the pattern says; they are for the seam to take.
 *
 * A row that does not go on may be a mirror image of itself in the seam. That
 * is told apart from being off, and does not match either.
 */
import { modulo } from '../../grid/index.ts';
import { edgesAt, type Outline } from '../../piece/index.ts';
import { runOn, tierOf } from '../copies.ts';
import type { PlacedAllOver } from '../types.ts';
import { symmetriesOf, type RowSymmetry } from './row-symmetry.ts';

export type SeamMeeting =
  /** The pattern goes on across the seam as if there were none; rows of one yarn do anywhere. */
  | { readonly kind: 'continues' }
  /** It does not go on, and the seam is a mirror: what stands to its left is seen reversed to its right. */
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
  /** From the lowest row that was asked for up. */
  readonly rows: readonly SeamMeeting[];
  readonly runs: readonly SeamRun[];
  /** Rows that show the pattern going on; that are mirrored; that are off; that are plain at the seam. */
  readonly matching: number;
  readonly mirrored: number;
  readonly off: number;
  readonly plain: number;
  /** Rows of one yarn, which go on wherever they are cut and show nothing of a seam. */
  readonly uniform: number;
}

/** How the edges of an all-over meet, row by row, from its first row or from `lowest` where that is higher. */
export function seamMatchingOf(place: PlacedAllOver, outline: Outline, lowest = 1): SeamMatching {
  const firstRow = Math.max(place.firstRow, lowest);
  const rows = Array.from({ length: Math.max(0, place.lastRow - firstRow + 1) }, (_, index) =>
    meetingOn(place, outline, firstRow + index),
  );
  const isUniform = rows.map(({ kind }, index) => kind !== 'plain' && periodOn(place, firstRow + index) === 1);
  const uniform = isUniform.filter(Boolean).length;
  const count = (wanted: SeamMeeting['kind']): number => rows.filter(({ kind }) => kind === wanted).length;
  return {
    rows,
    runs: runsOf(rows, isUniform, firstRow),
    matching: count('continues') - uniform,
    mirrored: count('mirrors'),
    off: count('off'),
    plain: count('plain'),
    uniform,
  };
}

/** True if some row that shows the pattern at the seam does not show it going on. */
export function isBroken({ mirrored, off }: Pick<SeamMatching, 'mirrored' | 'off'>): boolean {
  return mirrored + off > 0;
}

const CONTINUES: SeamMeeting = { kind: 'continues' };
const MIRRORS: SeamMeeting = { kind: 'mirrors' };

/** How the edges of an all-over meet on one row of the piece, which must be one of its rows. */
export function meetingOn(place: PlacedAllOver, outline: Outline, row: number): SeamMeeting {
  const { left, right } = seenEdges(place, outline, row);
  if (!reachesSeam(place, outline, row)) {
    const { first, last } = knittedEnds(place, outline, row);
    const patterned = Math.max(0, Math.min(last, right) - Math.max(first, left) + 1);
    const seen = Math.max(0, right - left + 1);
    return { kind: 'plain', stitches: patterned === 0 ? seen : Math.max(0, first - left) + Math.max(0, right - last) };
  }
  const period = periodWithNeighbours(place, outline, row);
  const excess = modulo(right - left + 1, period);
  if (excess === 0) return CONTINUES;
  const { copyRow, origin } = tierOf(place, row);
  const { period: ofRow, mirrorSum } = symmetriesOf(place.copy)[copyRow] as RowSymmetry;
  if (mirrorSum !== null && modulo(left + right - 2 * origin - mirrorSum, ofRow) === 0) return MIRRORS;
  return { kind: 'off', by: 2 * excess <= period ? excess : excess - period };
}

/**
 * The stitches by which a row can be moved and look the same, together with
 * those of the rows below and above it that do not go on by themselves. It
 * divides the copy. A row of one yarn looks the same anywhere.
 */
function periodWithNeighbours(place: PlacedAllOver, outline: Outline, row: number): number {
  const ofRow = periodOn(place, row);
  if (ofRow === 1) return 1;
  const broken = [row - 1, row + 1].filter(
    (other) =>
      other >= place.firstRow &&
      other <= place.lastRow &&
      reachesSeam(place, outline, other) &&
      modulo(seenStitches(place, outline, other), periodOn(place, other)) !== 0,
  );
  return broken.reduce((period, other) => leastCommonMultiple(period, periodOn(place, other)), ofRow);
}

function periodOn(place: PlacedAllOver, row: number): number {
  return (symmetriesOf(place.copy)[tierOf(place, row).copyRow] as RowSymmetry).period;
}

/** First and last needle of a row that the seam leaves. */
function seenEdges({ seamAllowance }: PlacedAllOver, outline: Outline, row: number): { left: number; right: number } {
  const { first, last } = edgesAt(outline, row);
  return { left: first + seamAllowance.left, right: last - seamAllowance.right };
}

function seenStitches(place: PlacedAllOver, outline: Outline, row: number): number {
  const { left, right } = seenEdges(place, outline, row);
  return right - left + 1;
}

/** True if the pattern of a row comes up to the seam at both edges. */
function reachesSeam(place: PlacedAllOver, outline: Outline, row: number): boolean {
  const { left, right } = seenEdges(place, outline, row);
  const { first, last } = knittedEnds(place, outline, row);
  return first <= left && last >= right && left <= right;
}

function leastCommonMultiple(a: number, b: number): number {
  let [greater, divisor] = [a, b];
  while (divisor !== 0) [greater, divisor] = [divisor, greater % divisor];
  return (a / greater) * b;
}

/** First and last needle of the pattern on a row: those of its run, less the copies that are left out at its ends. */
function knittedEnds(
  place: PlacedAllOver,
  outline: Outline,
  row: number,
): { readonly first: number; readonly last: number } {
  const run = runOn(place, outline, row);
  if (!run) return { first: Infinity, last: -Infinity };
  const { tier, origin } = tierOf(place, row);
  const leftOut = place.without.get(tier);
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
