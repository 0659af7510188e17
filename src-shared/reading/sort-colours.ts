/** Cells sorted by yarn. */
import { coloursApart, findColours, type Evidence } from './clusters.ts';
import { nearestOf, squaredDistance, type Colours } from './k-means.ts';
import { colourTextOf, oklab, type Oklab } from './oklab.ts';
import type { CellSamples } from './sample.ts';

/** A yarn for each cell, and how clear the choice was. */
export interface Sorted {
  readonly yarns: Uint8Array;
  /** `#rrggbb` by yarn. */
  readonly colours: readonly string[];
  /** 0 at the border to the next yarn, 1 at the yarn itself. */
  readonly margins: Float32Array;
  /** 1 for each cell of a yarn that may be two, or another: its margin is 0 then. Null where there is no telling. */
  readonly unsure: Uint8Array | null;
  /** How many times as far from its yarn each cell is as half the cells of that yarn are. */
  readonly distances: Float32Array;
  /** How many of the four quarters of the cell's middle side with another yarn. */
  readonly strayQuarters: Uint8Array;
  /** How clearly the yarns are as many; null where their number was given. */
  readonly evidence: Evidence | null;
}

/** Quarters that differ by this much (OKLab), and twice the usual, make a cell unclean. */
const UNCLEAN = 0.03;

/** If more than this share is unclean, cells are marked with something that does not fill them. */
const MOST_UNCLEAN = 0.08;

/** A colour this far from its yarn (OKLab), and so many times the usual, is none of the yarns. */
const STRAY = 0.1;
const STRAY_TIMES = 6;

/** Two yarns that look nearer than this (OKLab) look alike. */
const LEAST_APART = 0.06;

/**
 * Cells of one yarn have one colour around their signs. Where they have two, so
 * many times as far apart as is needed to be two, as much of a dark sign on a
 * light colour was taken for as much of a light one on a dark, and their number is open.
 */
const TWO_AROUND = 3;

/** Two yarns are no further apart than what is one: how many there are is open. */
const OPEN: Evidence = { closest: 1, merged: 1 };

/** Cells of one yarn lie about this far apart at least (OKLab). */
const LEAST_USUAL = 0.01;

/**
 * `samples` under even light; `wanted` yarns, or null for as many as there are.
 *
 * Where cells hold signs, now the sign and now the colour around it is the
 * larger part, but both together are much the same in every cell of a yarn:
 * such charts are told apart by the means of all that is within their lines. The
 * colour of a yarn is that of the larger part of most of its cells all the same,
 * or that of their rims, if the larger part is the sign and signs are alike.
 */
export function sortColours(samples: CellSamples, wanted: number | null): Sorted {
  const larger = inOklab(samples.colours);
  const quarters = inOklab(samples.quarters);
  const clean = cleanCells(larger, quarters);
  const cells = clean === null ? inOklab(samples.wholes) : larger;
  const found = findColours(cells, clean ?? new Uint8Array(cells.length / 3).fill(1), wanted);
  const { colours, evidence } = found;
  const centres = Float64Array.from(colours.flat());
  const yarns = nearestOf(cells, centres);
  const quarterYarns = nearestOf(quarters, centres);
  const strayQuarters = new Uint8Array(yarns.length);
  quarterYarns.forEach((yarn, quarter) => {
    const cell = quarter >> 2;
    if (yarn !== yarns[cell]) strayQuarters[cell] = (strayQuarters[cell] as number) + 1;
  });
  const rims = clean === null ? inOklab(samples.rims) : null;
  const open = colours.flatMap((_, yarn) => (rims && coloursApart(rims, yarns, yarn) >= TWO_AROUND ? [yarn] : []));
  // Where one yarn is two, by the number that was given two are one: those that lie nearest, most likely.
  const parted = open.length > 0 ? found.nearest : [];
  const unsure = new Set(wanted === null ? [] : [...found.unsure, ...open, ...parted]);
  const own = Float64Array.from(yarns, (yarn, cell) => Math.sqrt(squaredDistance(cells, cell, centres, yarn)));
  return {
    yarns,
    colours: (rims === null ? colours : seenColours(colours, yarns, larger, rims)).map(colourTextOf),
    margins: marginsOf(cells, centres, yarns, own).map((margin, cell) =>
      unsure.has(yarns[cell] as number) ? 0 : margin,
    ),
    unsure: yarns.map((yarn) => (unsure.has(yarn) ? 1 : 0)),
    distances: timesUsual(own, yarns, LEAST_USUAL),
    strayQuarters,
    evidence: wanted === null ? (open.length > 0 ? OPEN : evidence) : null,
  };
}

/** The colours of yarns whose cells hold signs. */
function seenColours(found: readonly Oklab[], yarns: Uint8Array, larger: Colours, rims: Colours): Oklab[] {
  const inMost = found.map((colour, yarn) => middleColour(larger, yarns, yarn, colour));
  const isAlike = inMost.some((one, i) => inMost.some((other, j) => j < i && apart(one, other) < LEAST_APART));
  return isAlike ? found.map((colour, yarn) => middleColour(rims, yarns, yarn, colour)) : inMost;
}

function apart(one: Oklab, other: Oklab): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}

/** The middle of each number of the colours of a yarn's cells; `otherwise` where it has none. */
function middleColour(cells: Colours, yarns: Uint8Array, yarn: number, otherwise: Oklab): Oklab {
  const members = [...yarns.keys()].filter((cell) => yarns[cell] === yarn);
  if (members.length === 0) return otherwise;
  const [l, a, b] = [0, 1, 2].map((axis) => middleOf(members.map((cell) => cells[cell * 3 + axis] as number)));
  return [l as number, a as number, b as number];
}

function inOklab(colours: Float32Array): Colours {
  const converted = new Float64Array(colours.length);
  for (let i = 0; i < colours.length; i += 3) {
    converted.set(oklab(colours[i] as number, colours[i + 1] as number, colours[i + 2] as number), i);
  }
  return converted;
}

/**
 * 1 for each cell whose quarters all have about its own colour; null where a
 * good share of the cells has not: they are marked, not dirty.
 */
function cleanCells(cells: Colours, quarters: Colours): Uint8Array | null {
  const count = cells.length / 3;
  const furthest = Float64Array.from({ length: count }, (_, cell) =>
    Math.sqrt(Math.max(...[0, 1, 2, 3].map((quarter) => squaredDistance(quarters, cell * 4 + quarter, cells, cell)))),
  );
  const limit = Math.max(UNCLEAN, 2 * middleOf([...furthest]));
  const clean = Uint8Array.from(furthest, (distance) => (distance <= limit ? 1 : 0));
  const unclean = count - clean.reduce((sum, isClean) => sum + isClean, 0);
  return unclean > MOST_UNCLEAN * count ? null : clean;
}

/**
 * Each cell's distance `own` from its group as times that of the middle cell
 * of the group, which is taken to be `least` at least.
 */
export function timesUsual(own: Float64Array, groups: Uint8Array, least: number): Float32Array {
  const members = new Map<number, number[]>();
  groups.forEach((group, cell) => {
    const those = members.get(group);
    if (those) those.push(own[cell] as number);
    else members.set(group, [own[cell] as number]);
  });
  const usual = new Map([...members].map(([group, distances]) => [group, Math.max(least, middleOf(distances))]));
  return Float32Array.from(groups, (group, cell) => (own[cell] as number) / (usual.get(group) as number));
}

function marginsOf(cells: Colours, centres: Colours, yarns: Uint8Array, own: Float64Array): Float32Array {
  const stray = Array.from({ length: centres.length / 3 }, (_, yarn) =>
    Math.max(STRAY, STRAY_TIMES * middleOf([...own].filter((_, cell) => yarns[cell] === yarn))),
  );
  return Float32Array.from(yarns, (yarn, cell) => {
    const distance = own[cell] as number;
    // None of the yarns: what it is has to be looked at.
    if (distance > (stray[yarn] as number)) return 0;
    let next = Infinity;
    for (let other = 0; other < centres.length / 3; other++) {
      if (other !== yarn) next = Math.min(next, squaredDistance(cells, cell, centres, other));
    }
    if (next === Infinity) return 1;
    next = Math.sqrt(next);
    return next + distance === 0 ? 0 : (next - distance) / (next + distance);
  });
}

function middleOf(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
}
