/**
 * The best ways to share a piece out among its spaces: exact, and fast.
 *
 * Placements are far too many to score one by one (nine groups with 60 free
 * needles: 5.7 · 10¹⁰), so the search goes down the order of ranking instead
 * (order.ts) and makes only what it returns.
 *
 * 1. *Imbalance*, level by level from the least there can be. All placements
 *    of a level come before all of the next.
 * 2. On a level, every pair of margins that can be completed is an *opening*.
 *    What remains is to fill the gaps, with a known sum and a known imbalance.
 * 3. Each opening is searched through *windows*, ranges in which all its gaps
 *    must lie. Whether a window holds any placement is answered in one step
 *    (`canShare`). A window is worth (distance from the rule, spread, margins)
 *    as if its ends were reached. A queue gives out the windows of all
 *    openings in that order, and each one given out puts in the next wider
 *    ones.
 * 4. From the windows of equal worth the placements that reach both ends are
 *    drawn in order from the left (`sharings`) until enough are found.
 *
 * Why it is exact. A placement reaches both ends of just one window, and its
 * score is what that window is worth; so it is met once, at its place in the
 * order, provided the queue gives out windows in order and misses none that
 * matters. In order: a wider window has a larger spread and no smaller
 * distance, which rules promise. None missed: the first window of an opening
 * is the tightest at both ends that any placement of it allows; from there
 * windows grow upwards needle by needle as far as any gap of the opening can
 * reach, and each of them downwards likewise. Placements that do not reach
 * both ends lie in a window given out before; since the search goes on, fewer
 * of those were there than asked for, so passing over them costs next to
 * nothing.
 *
 * Where a level has fewer placements than asked for, windows would grow in
 * vain. So a level with few openings is counted first and, if it has no more
 * than wanted, simply listed.
 */
import type { Frame } from '../frame.ts';
import { compareScores, compareSpaces, scoreOf } from '../order.ts';
import type { Demand, GapRange } from '../rules/index.ts';
import { canShare, highestGap, imbalanceBounds, lowestGap, mirrored, type Mirrored } from './mirrored.ts';
import { openings, type Opening } from './opening.ts';
import { Queue } from './queue.ts';
import { sharings } from './sharings.ts';

/** One imbalance level: what can still be chosen. */
interface Level {
  readonly gaps: Mirrored;
  /** The widest range any gap can need. */
  readonly widest: GapRange;
  readonly demand: Demand;
  /** Openings that can be completed. */
  readonly openings: readonly Opening[];
}

/** An opening with all its gaps in one range, and what that is worth. */
interface Window {
  readonly opening: Opening;
  readonly range: GapRange;
  /** Only windows at the tightest lower end grow upwards, so that each is met once. */
  readonly growsUp: boolean;
  readonly fromRule: number;
}

/**
 * The best `most` ways to choose the judged spaces of `frame`, best first.
 * Spaces that the demand fixes must be no less than their least.
 */
export function bestSpaces(frame: Frame, demand: Demand, most: number): number[][] {
  const fixed = withFixedSpaces(frame, demand);
  const gaps = mirrored(fixed.least.slice(1, -1));
  const free = fixed.total - fixed.least.reduce((sum, space) => sum + space, 0);
  const widest = { least: gaps.smallest, most: gaps.largest + (demand.gap === null ? free : 0) };
  const { from, to } = imbalanceBounds(mirrored(fixed.least), fixed.total);
  const found: number[][] = [];
  for (let imbalance = from; imbalance <= to && found.length < most; imbalance++) {
    const feasible: Opening[] = [];
    for (const opening of openings(fixed, imbalance, demand.margin !== null)) {
      if (canShare(gaps, opening, widest)) feasible.push(opening);
    }
    found.push(...bestOfLevel({ gaps, widest, demand, openings: feasible }, most - found.length));
  }
  return found;
}

/** The frame with what the demand fixes as the least of margins and gaps. */
function withFixedSpaces(frame: Frame, demand: Demand): Frame {
  const last = frame.least.length - 1;
  const least = frame.least.map(
    (value, index) => (index === 0 || index === last ? demand.margin : demand.gap) ?? value,
  );
  return { least, total: frame.total };
}

function bestOfLevel(level: Level, wanted: number): number[][] {
  if (level.openings.length <= wanted) {
    const all = firstPlacements(level, wanted + 1);
    if (all.length <= wanted) {
      const scores = all.map((spaces) => scoreOf(spaces, level.demand));
      return scores.sort(compareScores).map(({ spaces }) => [...spaces]);
    }
  }
  return bestByWindows(level, wanted);
}

/** The first `most` placements of a level as they come, or all if there are fewer. */
function firstPlacements({ gaps, widest, openings }: Level, most: number): number[][] {
  const found: number[][] = [];
  for (const opening of openings) {
    for (const chosen of sharings(gaps, opening, widest)) {
      found.push([opening.left, ...chosen, opening.right]);
      if (found.length === most) return found;
    }
  }
  return found;
}

/** The best `wanted` placements of a level that has at least as many. */
function bestByWindows(level: Level, wanted: number): number[][] {
  const queue = new Queue(compareWindows);
  for (const opening of level.openings) {
    queue.push(windowOf(level, opening, tightest(level, opening), true));
  }
  const found: number[][] = [];
  while (found.length < wanted) {
    const equals = takeEquals(queue);
    if (equals.length === 0) break;
    const missing = wanted - found.length;
    const alike = equals.flatMap((window) => placementsReachingEnds(level, window, missing));
    alike.sort(compareSpaces);
    found.push(...alike.slice(0, missing));
    for (const window of equals) {
      for (const wider of nextWider(level, window)) queue.push(wider);
    }
  }
  return found;
}

/** The first `most` placements of a window that reach both its ends, from the left. */
function placementsReachingEnds({ gaps }: Level, { opening, range }: Window, most: number): number[][] {
  const found: number[][] = [];
  if (!canShare(gaps, opening, range)) return found;
  for (const chosen of sharings(gaps, opening, range)) {
    if (chosen.length > 0 && (Math.min(...chosen) > range.least || Math.max(...chosen) < range.most)) continue;
    found.push([opening.left, ...chosen, opening.right]);
    if (found.length === most) break;
  }
  return found;
}

/** The windows one needle wider that are not reached from another. */
function nextWider(level: Level, { opening, range: { least, most }, growsUp }: Window): Window[] {
  const { gaps, widest } = level;
  const wider: Window[] = [];
  if (gaps.least.length === 0) return wider;
  if (least > lowestGap(gaps, opening, widest, most)) {
    wider.push(windowOf(level, opening, { least: least - 1, most }, false));
  }
  if (growsUp && most < highestGap(gaps, opening, widest)) {
    wider.push(windowOf(level, opening, { least, most: most + 1 }, true));
  }
  return wider;
}

/** The least range in which gaps of the opening may lie: no placement has a smallest gap above it or a largest below it. */
function tightest({ gaps, widest }: Level, opening: Opening): GapRange {
  const count = gaps.least.length;
  if (count === 0) return widest;
  let least = Math.floor(opening.sum / count);
  while (!canShare(gaps, opening, { least, most: widest.most })) least--;
  let most = Math.max(Math.ceil(opening.sum / count), gaps.largest);
  while (!canShare(gaps, opening, { least: widest.least, most })) most++;
  return { least, most };
}

function windowOf({ gaps, demand }: Level, opening: Opening, range: GapRange, growsUp: boolean): Window {
  const extremes = gaps.least.length > 0 ? range : null;
  return { opening, range, growsUp, fromRule: demand.distance(opening.left, opening.right, extremes) };
}

/** The order of ranking, as far as a window decides it. */
function compareWindows(a: Window, b: Window): number {
  return (
    a.fromRule - b.fromRule ||
    a.range.most - a.range.least - (b.range.most - b.range.least) ||
    a.opening.sum - b.opening.sum // Smaller gaps in all are wider margins.
  );
}

/** Takes out all windows that are worth as much as the best. */
function takeEquals(queue: Queue<Window>): Window[] {
  const equals: Window[] = [];
  const best = queue.peek();
  for (let window = best; best && window && compareWindows(best, window) === 0; window = queue.peek()) {
    equals.push(window);
    queue.pop();
  }
  return equals;
}
