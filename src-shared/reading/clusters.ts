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

/**
 * The colours of cells, `colours` in OKLab; `isClean` marks cells of one
 * colour all over, which alone are looked at. With `wanted` that many, or
 * fewer where there are no more; without, as many as stand apart.
 */
export function findColours(colours: Colours, isClean: Uint8Array, wanted: number | null): Oklab[] {
  const looked = some(colours, isClean);
  let centres = kMeans(looked, GROUPS, SEED);
  let groups = nearestOf(looked, centres);
  centres = centresOf(looked, groups, centres);
  let merged = groupsOf(looked, groups, centres.length / 3);
  for (;;) {
    const [i, j, apart] = leastApart(merged);
    if (i === j) break;
    const isOne = merged.length > MOST_YARNS || apart < 1;
    if (wanted === null ? !isOne : merged.length <= wanted) break;
    const one = together(merged[i] as Group, merged[j] as Group);
    merged = [...merged.filter((_, index) => index !== i && index !== j), one];
  }
  if (wanted === null && merged.length > 1) {
    const enough = merged.filter(({ count }) => count >= Math.min(LEAST_CELLS, looked.length / 3));
    if (enough.length > 0) merged = enough;
  }
  centres = Float64Array.from(merged.flatMap(({ mean }) => [...mean]));
  groups = nearestOf(looked, centres);
  centres = centresOf(looked, groups, centres);
  return merged.map((_, i) => [centres[i * 3], centres[i * 3 + 1], centres[i * 3 + 2]] as unknown as Oklab);
}

/** The clean cells, evenly thinned; all cells where hardly any is clean. */
function some(colours: Colours, isClean: Uint8Array): Colours {
  let cells = [...isClean.keys()].filter((cell) => isClean[cell] === 1);
  if (cells.length < isClean.length / 10) cells = [...isClean.keys()];
  const step = Math.max(1, cells.length / MOST_CELLS);
  const kept = Array.from({ length: Math.floor(cells.length / step) }, (_, i) => cells[Math.floor(i * step)] as number);
  return Float64Array.from(kept.flatMap((cell) => [...colours.subarray(cell * 3, cell * 3 + 3)]));
}

/** Cells of like colour: how many, their mean, and how they spread (covariance, 3 × 3). */
interface Group {
  readonly count: number;
  readonly mean: Oklab;
  readonly spread: readonly number[];
}

function groupsOf(colours: Colours, groups: Uint8Array, count: number): Group[] {
  const found: Group[] = [];
  for (let group = 0; group < count; group++) {
    const members = [...groups.keys()].filter((i) => groups[i] === group);
    if (members.length === 0) continue;
    const at = (i: number, axis: number): number => colours[i * 3 + axis] as number;
    const mean = [0, 1, 2].map((axis) => members.reduce((sum, i) => sum + at(i, axis), 0) / members.length);
    const spread = Array.from({ length: 9 }, (_, k) => {
      const [a, b] = [Math.floor(k / 3), k % 3];
      const sum = members.reduce(
        (total, i) => total + (at(i, a) - (mean[a] as number)) * (at(i, b) - (mean[b] as number)),
        0,
      );
      return sum / members.length;
    });
    found.push({ count: members.length, mean: mean as unknown as Oklab, spread });
  }
  return found;
}

/** The mean and the spread of two groups as one. */
function together(one: Group, other: Group): Group {
  const count = one.count + other.count;
  const [p, q] = [one.count / count, other.count / count];
  const mean = [0, 1, 2].map((axis) => p * (one.mean[axis] as number) + q * (other.mean[axis] as number));
  const between = [0, 1, 2].map((axis) => (one.mean[axis] as number) - (other.mean[axis] as number));
  const spread = one.spread.map(
    (value, k) =>
      p * value +
      q * (other.spread[k] as number) +
      p * q * (between[Math.floor(k / 3)] as number) * (between[k % 3] as number),
  );
  return { count, mean: mean as unknown as Oklab, spread };
}

/** The pair that is least apart, and how far: below 1 they are one colour. The same index twice where there is one group. */
function leastApart(groups: readonly Group[]): readonly [number, number, number] {
  let best: readonly [number, number, number] = [0, 0, Infinity];
  for (let i = 0; i < groups.length; i++) {
    for (let j = i + 1; j < groups.length; j++) {
      const apart = distanceApart(groups[i] as Group, groups[j] as Group);
      if (apart < best[2]) best = [i, j, apart];
    }
  }
  return best;
}

function distanceApart(one: Group, other: Group): number {
  const between = [0, 1, 2].map((axis) => (one.mean[axis] as number) - (other.mean[axis] as number));
  const distance = Math.hypot(...between);
  if (distance === 0) return 0;
  const along = ({ spread }: Group): number => {
    let variance = 0;
    spread.forEach((value, k) => {
      variance += value * (between[Math.floor(k / 3)] as number) * (between[k % 3] as number);
    });
    return Math.sqrt(Math.max(0, variance)) / distance;
  };
  const difference = linearDifference(linearOfOklab(one.mean), linearOfOklab(other.mean));
  return Math.min(distance / (APART * (along(one) + along(other)) + 1e-9), difference / LEAST_DIFFERENCE);
}
