/**
 * Hooking up: after the row that makes a float it is lifted onto the needle
 * above, and the next row knits it in. On neighbouring rows never the same
 * needle, or a line shows on the front (*Interweave*, tutorial on tacking down
 * long floats; a machine-knitting magazine's helpline on long floats).
 */
import type { Run, Slot } from '../../bed/index.ts';
import type { Float, StrandId } from '../types.ts';
import { heldAt, mustHolds } from './held.ts';

/** A float of the row just knitted that is lifted onto a needle above it. */
export interface Lift {
  readonly needle: Slot;
  readonly strand: StrandId;
  /** From its first needle to its last. */
  readonly float: Run;
  /** The next row knits the needle in the float's own yarn, so that nothing of it is seen. */
  readonly isHidden: boolean;
}

/** A row of floats that are to be brought within the limit by lifting them. */
export interface LiftRow {
  /** Those over the limit. */
  readonly floats: readonly Float[];
  /** The most stitches that may lie loose. */
  readonly longest: number;
  /** The needles that the next row knits; null where there is none to knit a float in. */
  readonly above: Run | null;
  /** The palette index that a needle knits in the next row. */
  readonly yarnAbove: (needle: Slot) => number;
  /** Needles on which something else is hung after the row. */
  readonly taken?: ReadonlySet<number>;
}

/** A float that is lifted, and where; null where no choice of needles brings it within the limit. */
export interface LiftedFloat {
  readonly float: Float;
  readonly needles: readonly Slot[] | null;
}

/**
 * Where the floats of each row are lifted, from the bottom up; rows that have
 * none to lift are undefined, and no neighbours of any.
 *
 * Each float has the fewest lifts that leave it within the limit, given the
 * needles of the row below, of what hangs there already and of the floats left
 * of it. Of those, the needles that do not take from the float of the row above
 * the only ones it can do with; then those that the next row knits in the
 * float's own yarn; then the most even. Where a row needs more for what the row
 * below has taken, the rows below it are lifted otherwise if that saves some.
 */
export function liftFloats(rows: readonly (LiftRow | undefined)[]): (readonly LiftedFloat[] | undefined)[] {
  const found: (readonly LiftedFloat[] | undefined)[] = [];
  for (const [index, row] of rows.entries()) {
    if (!row) continue;
    found[index] = liftRow(rows, index, needlesIn(found[index - 1]), NO_NEEDLES);
    const alone = liftRow(rows, index, NO_NEEDLES, needlesIn(found[index - 1]));
    if (costOf(alone) < costOf(found[index])) makeRoom(rows, found, index, alone);
  }
  return rows.map((_, index) => found[index]);
}

/** So many rows are lifted otherwise to make room for one above them. */
const MOST_LIFTED_ANEW = 12;

/** A float that stays too long weighs more than any lifts. */
const LEFT_TOO_LONG = 2 ** 20;

/** Lifts a row as it would be `alone`, and the rows below it otherwise, if that costs less in all. */
function makeRoom(
  rows: readonly (LiftRow | undefined)[],
  found: (readonly LiftedFloat[] | undefined)[],
  index: number,
  alone: readonly LiftedFloat[],
): void {
  const anew = [alone];
  let saved = costOf(found[index]) - costOf(alone);
  for (let row = index - 1; rows[row] && index - row <= MOST_LIFTED_ANEW; row--) {
    const above = needlesIn(anew.at(-1));
    const below = needlesIn(found[row - 1]);
    const fits = liftRow(rows, row, union(below, above), NO_NEEDLES);
    if (saved + costOf(found[row]) - costOf(fits) > 0) {
      for (const [at, lifted] of [...anew, fits].entries()) found[index - at] = lifted;
      return;
    }
    const presses = liftRow(rows, row, above, below);
    saved += costOf(found[row]) - costOf(presses);
    if (saved <= 0) return;
    anew.push(presses);
  }
}

const NO_NEEDLES: ReadonlySet<number> = new Set();

function needlesIn(lifted: readonly LiftedFloat[] | undefined): ReadonlySet<number> {
  return lifted ? new Set(lifted.flatMap(({ needles }) => needles ?? [])) : NO_NEEDLES;
}

function union(one: ReadonlySet<number>, other: ReadonlySet<number>): ReadonlySet<number> {
  return new Set([...one, ...other]);
}

function costOf(lifted: readonly LiftedFloat[] | undefined): number {
  return (lifted ?? []).reduce((sum, { needles }) => sum + (needles?.length ?? LEFT_TOO_LONG), 0);
}

/** Lifts the floats of a row, on none of the needles `not` and on as few as may be of those `rather not`. */
function liftRow(
  rows: readonly (LiftRow | undefined)[],
  index: number,
  not: ReadonlySet<number>,
  ratherNot: ReadonlySet<number>,
): readonly LiftedFloat[] {
  const { floats, longest, above, yarnAbove, taken } = rows[index] as LiftRow;
  if (above === null) return floats.map((float) => ({ float, needles: null }));
  const [below, next] = [rows[index - 1], rows[index + 1]];
  const wanted = new Set(next?.floats.flatMap((float) => mustHolds(float.first, float.last, next.longest)));
  const lifted = new Set<number>();
  const isFree = (needle: number): boolean =>
    needle >= above.first &&
    needle <= above.last &&
    ![not, lifted, taken, below?.taken, next?.taken].some((needles) => needles?.has(needle));
  return floats.map((float) => {
    const needles = heldAt(float.first, float.last, longest, (needle) => {
      if (!isFree(needle)) return null;
      const inTheWay = Number(wanted.has(needle)) + Number(ratherNot.has(needle));
      return { holds: 1, inTheWay, seen: yarnAbove(needle as Slot) === float.strand.yarn ? 0 : 1 };
    });
    for (const needle of needles ?? []) lifted.add(needle);
    return { float, needles: needles as Slot[] | null };
  });
}
