/**
 * Where one float is broken.
 *
 * A float lies behind so many needles; some of them may take an anchor, and it
 * is to lie loose over no more than so many. Chosen are as few as can be, and
 * among these the ones that lie most evenly.
 */

/** What may become of a needle of a float. */
export const CLOSED = 0;
/** It may take an anchor. */
export const OPEN = 1;
/** A person wants an anchor there. */
export const WANTED = 2;

/** What counts first: anchors, then those that stand in the way of the next row, then how even they lie. */
const EACH = 1e12;
const IN_THE_WAY = 1e8;

/** Longer floats than these are worked out each time. */
const MOST_KNOWN = 24;
/** Ways to open the needles of short floats, by the limit; forgotten once there are too many. */
const known = new Map<number, Map<number, readonly number[]>>();
const MOST_ANSWERS = 20_000;
let answers = 0;

/**
 * The needles of a float, from 0, that take an anchor, from the left.
 *
 * `needles` has one of {@link CLOSED}, {@link OPEN} and {@link WANTED} for each
 * needle that the float lies behind. No stretch longer than `longest` is left
 * that has an open needle in it: what is longer cannot be broken. As few as
 * that asks for, wanted ones among them; of several ways the one with the
 * fewest that are `inTheWay`, then the most even. Exact, by dynamic
 * programming over the needles; the cost grows as needles × `longest`.
 */
export function anchorsInFloat(needles: Uint8Array, longest: number, inTheWay?: Uint8Array): readonly number[] {
  if (needles.length <= longest) return NONE;
  if (inTheWay !== undefined || needles.length > MOST_KNOWN) return worked(needles, longest, inTheWay);
  let key = needles.length;
  for (const needle of needles) {
    if (needle === WANTED) return worked(needles, longest);
    key = key * 2 + needle;
  }
  let byNeedles = known.get(longest);
  if (!byNeedles) known.set(longest, (byNeedles = new Map<number, readonly number[]>()));
  const before = byNeedles.get(key);
  if (before) return before;
  if (++answers > MOST_ANSWERS) {
    known.clear();
    known.set(longest, (byNeedles = new Map<number, readonly number[]>()));
    answers = 1;
  }
  const found = worked(needles, longest);
  byNeedles.set(key, found);
  return found;
}

const NONE: readonly number[] = [];

function worked(needles: Uint8Array, longest: number, inTheWay?: Uint8Array): readonly number[] {
  const { length } = needles;
  // Stops are anchors and, at `length`, the stitch that ends the float; index 0 is the stitch that it comes from.
  const cost = new Float64Array(length + 2).fill(Infinity);
  const from = new Int32Array(length + 2);
  cost[0] = 0;
  /** The last stop before that may take an anchor, and the last that has to. */
  let [lastOpen, lastWanted] = [0, 0];
  for (let stop = 1; stop <= length + 1; stop++) {
    const isEnd = stop > length;
    const needle = isEnd ? CLOSED : (needles[stop - 1] as number);
    if (!isEnd && needle === CLOSED) continue;
    const own = isEnd ? 0 : EACH + (inTheWay?.[stop - 1] ? IN_THE_WAY : 0);
    // Further back there is an open needle in between, but for the very last one.
    const nearest = Math.min(lastOpen, Math.max(stop - 1 - longest, 0));
    for (let before = Math.max(nearest, lastWanted); before < stop; before++) {
      const loose = stop - before - 1;
      const sum = (cost[before] as number) + own + loose * loose;
      if (sum < (cost[stop] as number)) {
        cost[stop] = sum;
        from[stop] = before;
      }
    }
    lastOpen = stop;
    if (needle === WANTED) lastWanted = stop;
  }
  const chosen: number[] = [];
  for (let stop = from[length + 1] as number; stop > 0; stop = from[stop] as number) chosen.push(stop - 1);
  return chosen.reverse();
}

/** A stretch of a float that stays longer than the limit, in needles from 0. */
export interface LooseStretch {
  readonly first: number;
  readonly last: number;
}

/** The stretches of a float of so many needles that its anchors leave longer than `longest`. */
export function looseStretches(length: number, anchors: readonly number[], longest: number): LooseStretch[] {
  const stretches: LooseStretch[] = [];
  let first = 0;
  for (const stop of [...anchors, length]) {
    if (stop - first > longest) stretches.push({ first, last: stop - 1 });
    first = stop + 1;
  }
  return stretches;
}

/**
 * The needles of a float that every way with the fewest anchors takes: the
 * leftmost and the rightmost way meet there. `needles` as for
 * {@link anchorsInFloat}.
 */
export function neededInFloat(needles: Uint8Array, longest: number): number[] {
  const rightmost = farthest(needles, longest);
  if (rightmost.length === 0) return [];
  const leftmost = farthest(needles.slice().reverse(), longest)
    .map((at) => needles.length - 1 - at)
    .reverse();
  return rightmost.length === leftmost.length ? rightmost.filter((at, index) => leftmost[index] === at) : [];
}

/** Anchors as far from the start as they may be, one after the other. */
function farthest(needles: Uint8Array, longest: number): number[] {
  const taken: number[] = [];
  let from = -1;
  while (needles.length - from - 1 > longest) {
    let at = Math.min(from + longest + 1, needles.length - 1);
    while (at > from && needles[at] === CLOSED) at--;
    // None within reach: the stretch goes on to the next that is open.
    if (at === from) {
      at = from + 1;
      while (at < needles.length && needles[at] === CLOSED) at++;
      if (at === needles.length) break;
    }
    taken.push(at);
    from = at;
  }
  return taken;
}
