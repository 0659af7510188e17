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
}

export interface FoundGroups {
  readonly centres: Colours;
  readonly evidence: Evidence;
}

/**
 * The colours of cells, `colours` in OKLab; `isClean` marks cells of one
 * colour all over, which alone are looked at. With `wanted` that many, or
 * fewer where there are no more; without, as many as stand apart.
 */
export function findColours(colours: Colours, isClean: Uint8Array, wanted: number | null): FoundColours {
  const looked = some(colours, isClean, 3);
  const { centres, evidence } = findGroups(looked, 3, wanted, differenceOf);
  const colour = (_: unknown, i: number): Oklab => [...centres.subarray(i * 3, i * 3 + 3)] as unknown as Oklab;
  return { colours: Array.from({ length: centres.length / 3 }, colour), evidence };
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
  for (;;) {
    const [i, j, apart] = leastApart(merged, difference, isBySpread);
    evidence = { ...evidence, closest: apart };
    if (i === j) break;
    const isOne = merged.length > MOST_YARNS || apart < 1;
    if (wanted === null ? !isOne : merged.length <= wanted) break;
    const one = together(merged[i] as Group, merged[j] as Group);
    merged = [...merged.filter((_, index) => index !== i && index !== j), one];
    evidence = { ...evidence, merged: Math.max(evidence.merged, Math.min(1, apart)) };
  }
  if (wanted === null && merged.length > 1) {
    const enough = merged.filter(({ count }) => count >= Math.min(LEAST_CELLS, looked.length / size));
    if (enough.length > 0) merged = enough;
  }
  centres = Float64Array.from(merged.flatMap(({ mean }) => [...mean]));
  groups = nearestOf(looked, centres, size);
  return { centres: centresOf(looked, groups, centres, size), evidence };
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

/** The pair that is least apart, and how far: below 1 they are one colour. The same index twice where there is one group. */
function leastApart(
  groups: readonly Group[],
  difference: Difference,
  isBySpread: boolean,
): readonly [number, number, number] {
  let best: readonly [number, number, number] = [0, 0, Infinity];
  for (let i = 0; i < groups.length; i++) {
    for (let j = i + 1; j < groups.length; j++) {
      const [one, other] = [groups[i] as Group, groups[j] as Group];
      const apart = isBySpread ? distanceApart(one, other, difference) : difference(one.mean, other.mean);
      if (apart < best[2]) best = [i, j, apart];
    }
  }
  return best;
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
