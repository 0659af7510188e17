/**
 * The yarns of a chart: how many colours its cells have, and which.
 *
 * The cells are sorted into more groups than any chart has colours. Then the
 * two groups that are least apart are made one, again and again. Two halves of
 * one colour lie within their own spread; two colours lie further apart than
 * that, and so it shows where to stop.
 */
import { linearDifference } from './colour-difference.ts';
import { centresOf, kMeans, nearestOf, type Colours } from './k-means.ts';
import { linearOfOklab, type Oklab } from './oklab.ts';

/** The most yarns in a motif. */
export const MOST_YARNS = 16;

/** Groups to begin with. */
const GROUPS = MOST_YARNS + 8;

/** Cells looked at to find the colours. */
const MOST_CELLS = 6000;

/** Two groups are one colour up to this many times the sum of their spreads along the line between them. */
const APART = 2.6;

/** … and if they differ less than this (CIEDE2000): nobody charts two yarns that near. */
const LEAST_DIFFERENCE = 5;

/** Fewer cells than this are dirt, not a colour. */
const LEAST_CELLS = 2;

const SEED = 20;

/** How clearly groups are as many as they are said to be. */
export interface Evidence {
  /** How far apart the two are that lie nearest: at 1 and below they would be one. Infinite for one group. */
  readonly closest: number;
  /** How far apart the last two lay that were made one, at most 1; 0 where none were. */
  readonly merged: number;
}

export interface FoundColours {
  readonly colours: readonly Oklab[];
  readonly evidence: Evidence;
  /** Colours that may be parted or made one wrongly, though their number is known. */
  readonly unsure: ReadonlySet<number>;
  /** The two that lie nearest; none where there is one alone. */
  readonly nearest: readonly number[];
}

export interface FoundGroups {
  readonly centres: Colours;
  readonly evidence: Evidence;
  /** As in {@link FoundColours}. */
  readonly unsure: ReadonlySet<number>;
  readonly nearest: readonly number[];
}

/** Two that were made one, for a number that was given, lie so many times nearer than others, or it may have been those. */
const SURELY_NEXT = 1.5;

/** Whether the `next` two, so far apart, may be one, and not the `last` that were made one. */
export function mayBeNext(last: number, next: number): boolean {
  return next < SURELY_NEXT * last;
}

/**
 * The colours of cells, `colours` in OKLab; `isClean` marks cells of one
 * colour all over, which alone are looked at. With `wanted` that many, or
 * fewer where there are no more; without, as many as stand apart.
 */
export function findColours(colours: Colours, isClean: Uint8Array, wanted: number | null): FoundColours {
  const looked = some(colours, isClean, 3);
  const { centres, ...told } = findGroups(looked, 3, wanted, differenceOf);
  const colour = (_: unknown, i: number): Oklab => [...centres.subarray(i * 3, i * 3 + 3)] as unknown as Oklab;
  return { colours: Array.from({ length: centres.length / 3 }, colour), ...told };
}

function differenceOf(one: readonly number[], other: readonly number[]): number {
  const difference = linearDifference(linearOfOklab(one as unknown as Oklab), linearOfOklab(other as unknown as Oklab));
  return difference / LEAST_DIFFERENCE;
}

/** Of two halves of what is one, the smaller has at least this share, or it is a few that are spoiled. */
const LEAST_HALF = 0.15;

/**
 * How far apart the two colours lie that the cells of one `group` have, in OKLab:
 * at 1 and below, and where there are not two, they have one.
 */
export function coloursApart(colours: Colours, groups: Uint8Array, group: number): number {
  const members = [...groups.keys()].filter((cell) => groups[cell] === group);
  const own = Float64Array.from(members.flatMap((cell) => [...colours.subarray(cell * 3, cell * 3 + 3)]));
  if (members.length < 2 * LEAST_CELLS) return 0;
  const looked = some(own, new Uint8Array(members.length).fill(1), 3);
  const { centres, evidence } = findGroups(looked, 3, 2, differenceOf);
  if (centres.length < 6) return 0;
  const halves = nearestOf(looked, centres, 3);
  const inOne = halves.reduce((sum, half) => sum + half, 0) / halves.length;
  return Math.min(inOne, 1 - inOne) < LEAST_HALF ? 0 : evidence.closest;
}

/**
 * The centres of groups that stand apart, of things told by `size` numbers
 * each. `difference` says of two means how far apart they look, below 1 being
 * the same to anybody. With `wanted` that many, or fewer where there are no more.
 * `isBySpread`: two halves of what spreads are one group, too, however far apart
 * they look; not where one thing is seen in several ways, each of them sharp.
 */
export function findGroups(
  looked: Colours,
  size: number,
  wanted: number | null,
  difference: Difference,
  isBySpread = true,
): FoundGroups {
  let centres = kMeans(looked, GROUPS, SEED, size);
  let groups = nearestOf(looked, centres, size);
  centres = centresOf(looked, groups, centres, size);
  let merged = groupsOf(looked, groups, centres.length / size, size);
  let evidence: Evidence = { closest: Infinity, merged: 0 };
  let doubted: ReadonlySet<Group> = new Set();
  for (;;) {
    const pairs = nearestFirst(merged, difference, isBySpread);
    const [nearest] = pairs;
    evidence = { ...evidence, closest: nearest?.apart ?? Infinity };
    if (nearest === undefined) break;
    const { one, other, apart } = nearest;
    const isOne = merged.length > MOST_YARNS || apart < 1;
    if (wanted === null ? !isOne : merged.length <= wanted) break;
    const both = together(one, other);
    // A few cells that are spoiled belong to something; which, says nothing of the others.
    const isHalved = Math.min(one.count, other.count) >= LEAST_HALF * both.count;
    const others = pairs.filter((pair) => isHalved && mayBeNext(apart, pair.apart) && pair !== nearest);
    doubted = new Set(others.length === 0 ? [] : [both, ...others.flatMap((pair) => [pair.one, pair.other])]);
    merged = [...merged.filter((group) => group !== one && group !== other), both];
    evidence = { ...evidence, merged: Math.max(evidence.merged, Math.min(1, apart)) };
  }
  const unsure = new Set(wanted === null ? [] : merged.flatMap((group, i) => (doubted.has(group) ? [i] : [])));
  if (wanted === null && merged.length > 1) {
    const enough = merged.filter(({ count }) => count >= Math.min(LEAST_CELLS, looked.length / size));
    if (enough.length > 0) merged = enough;
  }
  const [nearest] = nearestFirst(merged, difference, isBySpread);
  const nearestTwo = nearest ? [merged.indexOf(nearest.one), merged.indexOf(nearest.other)] : [];
  centres = Float64Array.from(merged.flatMap(({ mean }) => [...mean]));
  groups = nearestOf(looked, centres, size);
  return { centres: centresOf(looked, groups, centres, size), evidence, unsure, nearest: nearestTwo };
}

type Difference = (one: readonly number[], other: readonly number[]) => number;

/** The clean cells, evenly thinned; all cells where hardly any is clean. */
export function some(colours: Colours, isClean: Uint8Array, size: number): Colours {
  let cells = [...isClean.keys()].filter((cell) => isClean[cell] === 1);
  if (cells.length < isClean.length / 10) cells = [...isClean.keys()];
  const step = Math.max(1, cells.length / MOST_CELLS);
  const kept = Array.from({ length: Math.floor(cells.length / step) }, (_, i) => cells[Math.floor(i * step)] as number);
  return Float64Array.from(kept.flatMap((cell) => [...colours.subarray(cell * size, cell * size + size)]));
}

/** Cells that are alike: how many, their mean, and how they spread (covariance, size × size). */
interface Group {
  readonly count: number;
  readonly mean: readonly number[];
  readonly spread: readonly number[];
}

function groupsOf(colours: Colours, groups: Uint8Array, count: number, size: number): Group[] {
  const axes = Array.from({ length: size }, (_, axis) => axis);
  const found: Group[] = [];
  for (let group = 0; group < count; group++) {
    const members = [...groups.keys()].filter((i) => groups[i] === group);
    if (members.length === 0) continue;
    const at = (i: number, axis: number): number => colours[i * size + axis] as number;
    const mean = axes.map((axis) => members.reduce((sum, i) => sum + at(i, axis), 0) / members.length);
    const spread = Array.from({ length: size * size }, (_, k) => {
      const [a, b] = [Math.floor(k / size), k % size];
      const sum = members.reduce(
        (total, i) => total + (at(i, a) - (mean[a] as number)) * (at(i, b) - (mean[b] as number)),
        0,
      );
      return sum / members.length;
    });
    found.push({ count: members.length, mean, spread });
  }
  return found;
}

/** The mean and the spread of two groups as one. */
function together(one: Group, other: Group): Group {
  const count = one.count + other.count;
  const [p, q] = [one.count / count, other.count / count];
  const size = one.mean.length;
  const mean = one.mean.map((value, axis) => p * value + q * (other.mean[axis] as number));
  const between = one.mean.map((value, axis) => value - (other.mean[axis] as number));
  const spread = one.spread.map(
    (value, k) =>
      p * value +
      q * (other.spread[k] as number) +
      p * q * (between[Math.floor(k / size)] as number) * (between[k % size] as number),
  );
  return { count, mean, spread };
}

/** Two groups and how far apart they are: below 1 they are one colour. */
interface Pair {
  readonly one: Group;
  readonly other: Group;
  readonly apart: number;
}

/** All pairs, those first that are least apart. */
function nearestFirst(groups: readonly Group[], difference: Difference, isBySpread: boolean): Pair[] {
  const pairs = groups.flatMap((one, i) =>
    groups.slice(i + 1).map((other) => ({
      one,
      other,
      apart: isBySpread ? distanceApart(one, other, difference) : difference(one.mean, other.mean),
    })),
  );
  return pairs.sort((a, b) => a.apart - b.apart);
}

function distanceApart(one: Group, other: Group, difference: Difference): number {
  const size = one.mean.length;
  const between = one.mean.map((value, axis) => value - (other.mean[axis] as number));
  const distance = Math.hypot(...between);
  if (distance === 0) return 0;
  const along = ({ spread }: Group): number => {
    let variance = 0;
    spread.forEach((value, k) => {
      variance += value * (between[Math.floor(k / size)] as number) * (between[k % size] as number);
    });
    return Math.sqrt(Math.max(0, variance)) / distance;
  };
  return Math.min(distance / (APART * (along(one) + along(other)) + 1e-9), difference(one.mean, other.mean));
}
