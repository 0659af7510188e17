/**
 * At which needles one float is held, so that what lies loose between them is
 * within the limit.
 *
 * A float over the needles `first` … `last` comes from the stitch before them
 * and goes to the stitch behind them. Held at some of its needles it lies loose
 * in parts: from one hold to the next, the needles between.
 */

/** What holding a float at a needle costs, and at which it cannot be held: null. Costs count before evenness, each below 2 ** 20. */
export type CostAt = (needle: number) => HoldCost | null;

export interface HoldCost {
  /** Counts first: a hold that has to be made. */
  readonly holds: number;
  /** Counts next: it stands in the way of the float above. */
  readonly inTheWay: number;
  /** Counts last: it may be seen. */
  readonly seen: number;
}

/** 2 ** 17: more than there are needles. Three such counts side by side stay whole in a number. */
const MOST = 2 ** 17;

/**
 * The needles at which the float is held, from left to right; none where it is
 * within the limit as it is, null where no choice brings it there.
 *
 * Of all choices the one with the lowest sum of costs, in the order in which
 * {@link HoldCost} has them; of those the one whose parts are most even (the
 * least sum of their squares); of those the one furthest to the left. Exact: a
 * shortest way over its needles, in `needles × longest` steps.
 */
export function heldAt(first: number, last: number, longest: number, costAt: CostAt): number[] | null {
  const stitches = last - first + 1;
  if (stitches <= longest) return [];
  // With nothing loose allowed it would be held at every needle, which holds no yarn at all.
  if (longest < 1) return null;
  // Places 0 and stitches + 1 are the stitches at its ends; place p is needle first + p - 1.
  const end = stitches + 1;
  const cost = new Float64Array(end + 1).fill(Infinity);
  const unevenness = new Float64Array(end + 1).fill(Infinity);
  const from = new Int32Array(end + 1).fill(-1);
  cost[0] = unevenness[0] = 0;
  for (let place = 1; place <= end; place++) {
    const here = place === end ? NOTHING : costAt(first + place - 1);
    if (here === null) continue;
    const own = (here.holds * MOST + here.inTheWay) * MOST + here.seen;
    for (let before = Math.max(0, place - longest - 1); before < place; before++) {
      const way = (cost[before] as number) + own;
      if (way > (cost[place] as number) || way === Infinity) continue;
      const uneven = (unevenness[before] as number) + (place - before - 1) ** 2;
      if (way === cost[place] && uneven >= (unevenness[place] as number)) continue;
      cost[place] = way;
      unevenness[place] = uneven;
      from[place] = before;
    }
  }
  if (cost[end] === Infinity) return null;
  const needles: number[] = [];
  for (let place = from[end] as number; place > 0; place = from[place] as number) needles.unshift(first + place - 1);
  return needles;
}

const NOTHING: HoldCost = { holds: 0, inTheWay: 0, seen: 0 };

/** The longest part of a float that lies loose between the needles at which it is held, from left to right. */
export function longestLoose(first: number, last: number, held: readonly number[]): number {
  let longest = 0;
  let before = first - 1;
  // Most floats hang free, and a drawing asks it of thousands a frame.
  if (held.length === 0) return last - before;
  for (const needle of [...held, last + 1]) {
    longest = Math.max(longest, needle - before - 1);
    before = needle;
  }
  return longest;
}

/**
 * The needles without which the fewest holds cannot do: where they leave no
 * play, each has to stand where it does.
 */
export function mustHolds(first: number, last: number, longest: number): number[] {
  const stitches = last - first + 1;
  if (stitches <= longest || longest < 1) return [];
  const holds = Math.ceil((stitches - longest) / (longest + 1));
  const play = holds * (longest + 1) + longest - stitches;
  return play > 0 ? [] : Array.from({ length: holds }, (_, index) => first + (index + 1) * (longest + 1) - 1);
}
