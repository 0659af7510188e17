/**
 * Which of two placements is better.
 *
 * In this order: less imbalance; nearer to the rule; gaps more alike; wider
 * margins rather than wider gaps, since the edge stitch curls or is lost in
 * the seam; further to the left. The last compares the first needles group by
 * group from the left, so no two placements rank alike.
 */
import type { Demand, GapRange } from './rules/index.ts';
import type { Reason } from './types.ts';

/** What a placement is ranked by. */
export interface Score {
  /** Sum of |space − its mirror image| over all pairs of spaces. */
  readonly imbalance: number;
  readonly fromRule: number;
  /** Largest less smallest gap. */
  readonly gapSpread: number;
  /** Both margins together. */
  readonly margins: number;
  /** The judged spaces, left to right. */
  readonly spaces: readonly number[];
}

/** The score of judged spaces (margin, gaps, margin) under what a rule asks. */
export function scoreOf(spaces: readonly number[], demand: Demand): Score {
  const left = spaces[0] as number;
  const right = spaces[spaces.length - 1] as number;
  const gaps = gapRange(spaces.slice(1, -1));
  let imbalance = 0;
  for (let i = 0, j = spaces.length - 1; i < j; i++, j--) {
    imbalance += Math.abs((spaces[i] as number) - (spaces[j] as number));
  }
  return {
    imbalance,
    fromRule: demand.distance(left, right, gaps),
    gapSpread: gaps ? gaps.most - gaps.least : 0,
    margins: left + right,
    spaces,
  };
}

/** The smallest and the largest gap, or null if there is none. */
function gapRange(gaps: readonly number[]): GapRange | null {
  return gaps.length === 0 ? null : { least: Math.min(...gaps), most: Math.max(...gaps) };
}

const criteria: readonly (readonly [Exclude<Reason['behindBy'], null>, (score: Score) => number])[] = [
  ['imbalance', (score) => score.imbalance],
  ['from-rule', (score) => score.fromRule],
  ['gap-spread', (score) => score.gapSpread],
  ['narrower-margins', (score) => -score.margins],
];

/** Negative if `a` is better than `b`, positive if worse, 0 only for the same placement. */
export function compareScores(a: Score, b: Score): number {
  for (const [, of] of criteria) {
    const difference = of(a) - of(b);
    if (difference !== 0) return difference;
  }
  return compareSpaces(a.spaces, b.spaces);
}

/** Negative if the groups of `a` lie further to the left: the first group that differs decides. */
export function compareSpaces(a: readonly number[], b: readonly number[]): number {
  // Up to the first space that differs the groups lie alike, so the smaller space puts the next group further left.
  const index = a.findIndex((space, i) => space !== b[i]);
  return index < 0 ? 0 : (a[index] as number) - (b[index] as number);
}

/** By what `worse` loses against `better`, which ranks somewhere before it: the first criterion in which they differ. */
export function behindBy(better: Score, worse: Score): Exclude<Reason['behindBy'], null> {
  const decisive = criteria.find(([, of]) => of(worse) !== of(better));
  return decisive ? decisive[0] : 'further-right';
}
