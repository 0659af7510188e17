/**
 * Spaces taken in mirrored pairs, and whether given totals can be met.
 *
 * Of each pair only the larger and the smaller space matter. If pairs sum to
 * s and differ by d in all, their larger spaces sum to (s + d) / 2 and their
 * smaller ones to (s − d) / 2, which separates the two: see {@link canShare}.
 */
import type { GapRange } from '../rules/index.ts';
import type { Opening } from './opening.ts';

/** The least that neighbouring spaces can be, read in pairs from the outside in. */
export interface Mirrored {
  readonly least: readonly number[];
  readonly pairs: number;
  /** Index of the space that is its own mirror image, or null for an even number of spaces. */
  readonly middle: number | null;
  /** The smallest and the largest of `least`; 0 if there are no spaces. */
  readonly smallest: number;
  readonly largest: number;
}

export function mirrored(least: readonly number[]): Mirrored {
  const pairs = least.length >> 1;
  return {
    least,
    pairs,
    middle: least.length % 2 === 1 ? pairs : null,
    smallest: least.length > 0 ? Math.min(...least) : 0,
    largest: least.length > 0 ? Math.max(...least) : 0,
  };
}

/**
 * True if the gaps can sum to `sum` with their pairs differing by `imbalance`
 * in all, every gap within `range` and no less than its least.
 *
 * Exact, for this reason. In a pair with leasts a ≤ b (raised to the range)
 * the larger space u may be anything from b to the top of the range, the
 * smaller one v anything from a to u. So with p pairs the larger spaces can
 * sum to U and the smaller ones to V if and only if
 *
 *     Σ b ≤ U ≤ p · top,   Σ a ≤ V ≤ U.
 *
 * Needed is plain. Enough: choose the u of each pair between b and top so that
 * they sum to U, start with v = a, and raise single v until they sum to V;
 * there is room, as v may rise to u and V ≤ U. A middle space x leaves
 * U = (sum − x + imbalance) / 2 and V = (sum − x − imbalance) / 2, so x must
 * have the parity that makes them whole, and the conditions bound x.
 */
export function canShare(gaps: Mirrored, opening: Opening, range: GapRange): boolean {
  if (range.most < gaps.largest || opening.imbalance < 0) return false;
  const { least, most } = middleRange(gaps, opening, range);
  // The nearest middle space that makes U and V whole.
  return least + ((opening.sum - opening.imbalance - least) & 1) <= most;
}

/** What {@link canShare} leaves for the middle space, but for its parity; 0 to 0 is all there is without one. */
function middleRange(gaps: Mirrored, { sum, imbalance }: Opening, range: GapRange): GapRange {
  const { least, pairs, middle } = gaps;
  const { smaller, larger } = leastSums(gaps, range.least);
  return {
    least: Math.max(
      middle === null ? 0 : Math.max(range.least, least[middle] as number),
      sum + imbalance - 2 * pairs * range.most,
    ),
    most: Math.min(middle === null ? 0 : range.most, sum + imbalance - 2 * larger, sum - imbalance - 2 * smaller),
  };
}

/** Σ a and Σ b: what the smaller and the larger spaces of the pairs sum to at least, when none lies below `floor`. */
function leastSums({ least }: Mirrored, floor = -Infinity): { smaller: number; larger: number } {
  let smaller = 0;
  let larger = 0;
  for (let i = 0, j = least.length - 1; i < j; i++, j--) {
    const a = least[i] as number;
    const b = least[j] as number;
    smaller += Math.max(floor, Math.min(a, b));
    larger += Math.max(floor, a, b);
  }
  return { smaller, larger };
}

/** A value no gap of the opening is above. */
export function highestGap(gaps: Mirrored, opening: Opening, widest: GapRange): number {
  const middle = middleRange(gaps, opening, widest);
  // One larger space takes all that U has over Σ b; one pair takes all that V has over Σ a.
  const { smaller, larger } = leastSums(gaps);
  const upper = (opening.sum - middle.least + opening.imbalance) / 2;
  let highest = gaps.middle === null ? -Infinity : middle.most;
  for (let i = 0, j = gaps.least.length - 1; i < j; i++, j--) {
    const a = gaps.least[i] as number;
    const b = gaps.least[j] as number;
    highest = Math.max(highest, upper - Math.max(larger - Math.max(a, b), smaller - Math.min(a, b)));
  }
  return Math.min(widest.most, Math.floor(highest));
}

/** A value no gap of the opening is below, when none is above `top`. */
export function lowestGap(gaps: Mirrored, opening: Opening, widest: GapRange, top: number): number {
  const middle = middleRange(gaps, opening, { least: widest.least, most: top });
  const lower = (opening.sum - middle.most - opening.imbalance) / 2;
  let lowest = gaps.middle === null ? Infinity : middle.least;
  for (let i = 0, j = gaps.least.length - 1; i < j; i++, j--) {
    const a = gaps.least[i] as number;
    const b = gaps.least[j] as number;
    // The other smaller spaces take at most what their larger ones have: U − b in all, and the top each.
    const rest = lower - (gaps.pairs - 1) * top;
    lowest = Math.min(lowest, Math.max(Math.min(a, b), Math.max(a, b) - opening.imbalance, rest));
  }
  return Math.max(widest.least, Math.ceil(lowest));
}

/** Bounds on the imbalance of spaces that sum to `total`; it may be unreachable within them, never beyond. */
export function imbalanceBounds(spaces: Mirrored, total: number): { from: number; to: number } {
  const { smaller, larger } = leastSums(spaces);
  // U + V is at most `paired`; Σ b ≤ U and Σ a ≤ V bound U − V on either side.
  const paired = total - (spaces.middle === null ? 0 : (spaces.least[spaces.middle] as number));
  return { from: Math.max(0, 2 * larger - paired), to: paired - 2 * smaller };
}
