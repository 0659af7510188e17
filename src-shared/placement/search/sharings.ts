/**
 * All ways to share out the gaps of an opening, in order from the left, with
 * no dead ends.
 *
 * Gaps are chosen left to right, smallest first, and a value is kept only if
 * the rest can still be completed, so the cost is per way found, not per way
 * tried. Between the two halves of a row some pairs have their left gap chosen
 * and their right one open. Such a pair either goes up from its left gap (the
 * open one is the larger) or down (it is the smaller), and which pairs go up
 * and which down is a choice with a catch: a pair does only one of them. So for
 * the half-chosen pairs it is kept, for each amount that must go up, how much
 * can go down at most (a small knapsack, `mostDown`). Whole pairs not yet
 * begun follow the two conditions of {@link canShare}.
 */
import type { GapRange } from '../rules/index.ts';
import type { Mirrored } from './mirrored.ts';
import type { Opening } from './opening.ts';

/** Pairs, from the outermost in, whose left gap is chosen and whose right one is open. */
interface HalfChosen {
  /** Sum of the left gaps. */
  readonly sum: number;
  /** What must go up at least: right gaps whose least lies above their left one. */
  readonly leastUp: number;
  /** `mostDown[up]`: with pairs picked that can go up by `up` or more, the most the others can go down; −1 if none can. */
  readonly mostDown: Int32Array;
}

/** The ways to fill `opening` within `range`; none if {@link canShare} says so. Each array is the caller's. */
export function* sharings(gaps: Mirrored, opening: Opening, range: GapRange): Generator<number[]> {
  const { pairs, middle } = gaps;
  const { sum, imbalance } = opening;
  const top = range.most;
  const count = gaps.least.length;
  const least = gaps.least.map((value) => Math.max(value, range.least));
  const leastMiddle = middle === null ? 0 : (least[middle] as number);
  const mostMiddle = middle === null ? 0 : top;
  const { smaller, larger } = sumsFromPair(least);
  const half: HalfChosen[] = [{ sum: 0, leastUp: 0, mostDown: new Int32Array(imbalance + 1).fill(-1) }];
  (half[0] as HalfChosen).mostDown[0] = 0;
  const chosen = new Array<number>(count).fill(0);
  yield* next(0, 0, 0, 0);

  /** True if the open gaps can be filled: pairs before `pair` are half chosen, the last `whole` are not begun. */
  function fits(pair: number, whole: number, middleGap: number, doneLarger: number, doneSmaller: number): boolean {
    const { sum: halfSum, leastUp, mostDown } = half[pair] as HalfChosen;
    const upper = (sum - middleGap + imbalance) / 2 - doneLarger - halfSum;
    const lower = (sum - middleGap - imbalance) / 2 - doneSmaller - halfSum;
    const leastLarger = whole > 0 ? (larger[pair] as number) : 0;
    const leastSmaller = whole > 0 ? (smaller[pair] as number) : 0;
    // Going up or down by less is always the easier, so the least of each decides.
    const up = Math.max(leastUp, upper - whole * top);
    const down = Math.max(0, leastSmaller - lower);
    return up <= upper - leastLarger && up + down <= upper - lower && down <= (mostDown[up] ?? -1);
  }

  function fitsSomeMiddle(pair: number): boolean {
    for (let middleGap = leastMiddle; middleGap <= mostMiddle; middleGap++) {
      if (isWhole(middleGap) && fits(pair, pairs - pair, middleGap, 0, 0)) return true;
    }
    return false;
  }

  /** True if the sums of larger and of smaller gaps come out whole. */
  function isWhole(middleGap: number): boolean {
    return ((sum - imbalance - middleGap) & 1) === 0;
  }

  function* next(
    index: number,
    middleGap: number,
    doneLarger: number,
    doneSmaller: number,
  ): Generator<number[], undefined> {
    if (index === count) {
      yield chosen.slice();
      return;
    }
    const mirror = count - 1 - index;
    for (let gap = least[index] as number; gap <= top; gap++) {
      chosen[index] = gap;
      if (index < mirror) {
        half[index + 1] = withPair(half[index] as HalfChosen, gap, least[mirror] as number, top);
        if (fitsSomeMiddle(index + 1)) yield* next(index + 1, 0, 0, 0);
      } else if (index === mirror) {
        if (isWhole(gap) && fits(pairs, 0, gap, 0, 0)) yield* next(index + 1, gap, 0, 0);
      } else {
        const left = chosen[mirror] as number;
        const nowLarger = doneLarger + Math.max(left, gap);
        const nowSmaller = doneSmaller + Math.min(left, gap);
        if (fits(mirror, 0, middleGap, nowLarger, nowSmaller)) {
          yield* next(index + 1, middleGap, nowLarger, nowSmaller);
        }
      }
    }
  }
}

/** For each pair, the sums of the smaller and of the larger leasts from it inwards. */
function sumsFromPair(least: readonly number[]): { smaller: number[]; larger: number[] } {
  const pairs = least.length >> 1;
  const smaller = new Array<number>(pairs + 1).fill(0);
  const larger = new Array<number>(pairs + 1).fill(0);
  for (let pair = pairs - 1; pair >= 0; pair--) {
    const a = least[pair] as number;
    const b = least[least.length - 1 - pair] as number;
    smaller[pair] = (smaller[pair + 1] as number) + Math.min(a, b);
    larger[pair] = (larger[pair + 1] as number) + Math.max(a, b);
  }
  return { smaller, larger };
}

/** The half-chosen pairs with one more, whose left gap is `gap` and whose right one is from `leastRight` to `top`. */
function withPair(before: HalfChosen, gap: number, leastRight: number, top: number): HalfChosen {
  const canGoUp = top - gap;
  const canGoDown = gap - leastRight;
  const mostDown = before.mostDown.map((withoutIt, up) => {
    const goesUp = before.mostDown[Math.max(0, up - canGoUp)] as number;
    const goesDown = canGoDown >= 0 && withoutIt >= 0 ? withoutIt + canGoDown : -1;
    return Math.max(goesUp, goesDown);
  });
  return { sum: before.sum + gap, leastUp: before.leastUp + Math.max(0, -canGoDown), mostDown };
}
