/** Cells sorted by the symbol that is drawn into them: a legend in black and white. */
import { mayBeNext, type Evidence } from './clusters.ts';
import { nearestOf, squaredDistance } from './k-means.ts';
import { timesUsual, type Sorted } from './sort-colours.ts';
import {
  apartOf,
  areParted,
  distancesTo,
  inShareOfInk,
  isHandful,
  looksOf,
  withoutSpecks,
  type Kept,
} from './symbol-looks.ts';
import { SYMBOL_NUMBERS } from './symbols.ts';

/** A cell this far from its symbol, and so many times the usual, has none of them. */
const STRAY = 0.25;
const STRAY_TIMES = 4;

/**
 * Colours that stand for symbols, which have none: the ground white, the
 * commonest symbol black, then hues as far apart as eight of them are.
 */
const STAND_INS = [
  '#ffffff',
  '#1d1d1f',
  '#b3372f',
  '#2f5fa8',
  '#3f8246',
  '#d89a2b',
  '#7b4a94',
  '#2d8f94',
  '#c46a92',
  '#7a5a3a',
  '#8c8c90',
  '#9db84f',
  '#5b3f8f',
  '#d8784a',
  '#4c6f5c',
  '#a8a05a',
];

/** Where the number of symbols is known: the next two that would be made one lie at least so far apart, or may be one. */
const SURELY_OTHER = 1.2;

/**
 * Two kinds that look as little alike as this and were made one all the same,
 * each of such a share of the cells, may be two symbols that blur has made
 * alike, and something else the one too many. Pieces of one symbol that lie as
 * far apart are smaller: up to 0.08 of the cells in 39 photographs of `npm run
 * photos` with corners 4 off.
 */
const NEARLY_APART = 0.8;
const LARGE_SHARE = 0.1;

/**
 * Looks that differ by at least this are looked at more closely before they are
 * made one; those whose cells are parted are so much further apart.
 */
const LEAST_PARTED = 0.5;
const PARTED_FURTHER = 2.2;

/** Cells of one symbol differ by about this at least. */
const LEAST_USUAL = 0.03;

/** `symbols` as `lookAtSymbols` gives them; `wanted` yarns, or null for as many symbols as there are. */
export function sortSymbols(symbols: Float64Array, wanted: number | null): Sorted {
  const even = inShareOfInk(symbols);
  const found = looksOf(even);
  const { looks, isSpeck, kindOf, evidence, unsure } = told(even, found, wanted);
  const nearest = nearestOf(even, looks, SYMBOL_NUMBERS);
  const kinds = nearest.map((look) => kindOf[look] as number);
  const own = distancesTo(even, looks, nearest);
  const isUnsure = kinds.map((kind, cell) => (isSpeck[cell] === 1 || unsure.has(kind) ? 1 : 0));
  return {
    ...byNumber(kinds, looks, kindOf),
    margins: marginsOf(even, looks, nearest, kindOf, own).map((margin, cell) => (isUnsure[cell] === 1 ? 0 : margin)),
    unsure: isUnsure,
    distances: timesUsual(own, nearest, LEAST_USUAL),
    strayQuarters: new Uint8Array(kinds.length),
    evidence: wanted === null ? (isHandful(kinds) ? { ...evidence, closest: 1 } : evidence) : null,
  };
}

interface Told extends Alike, Kept {}

/** The looks that are symbols, and which: dirt is none, unless so many yarns are asked for that it must be one. */
function told(even: Float64Array, found: Float64Array, wanted: number | null): Told {
  if (wanted === null) {
    const kept = withoutSpecks(even, found, false);
    return { ...kept, ...alike(even, kept.looks, null) };
  }
  for (const isStrict of [true, false]) {
    const kept = withoutSpecks(even, found, isStrict);
    const those = alike(even, kept.looks, wanted);
    if (new Set(those.kindOf).size >= wanted) return { ...kept, ...those };
  }
  const isSpeck = new Uint8Array(even.length / SYMBOL_NUMBERS);
  return { looks: found, isSpeck, ...alike(even, found, wanted) };
}

/** Two looks and how far apart they are, or further since their cells are parted. */
interface Pair {
  readonly one: number;
  readonly other: number;
  readonly apart: number;
  readonly isFurther: boolean;
}

interface Alike {
  /** For each look its kind. */
  readonly kindOf: readonly number[];
  readonly evidence: Evidence;
  /** Kinds that may be parted or made one wrongly, though their number is known. */
  readonly unsure: ReadonlySet<number>;
}

/**
 * Which kind each look is of: looks that are one when moved by a place are one
 * symbol, drawn a little to the side. With `wanted`, the most alike are made one
 * until there are so many; where others are nearly as much alike, those and
 * these are unsure.
 */
function alike(even: Float64Array, looks: Float64Array, wanted: number | null): Alike {
  const count = looks.length / SYMBOL_NUMBERS;
  const look = (i: number): number[] => [...looks.subarray(i * SYMBOL_NUMBERS, (i + 1) * SYMBOL_NUMBERS)];
  const nearest = nearestOf(even, looks, SYMBOL_NUMBERS);
  const kindOf = Array.from({ length: count }, (_, i) => i);
  const cellsOf = (kind: number): number[] =>
    [...nearest.keys()].filter((cell) => kindOf[nearest[cell] as number] === kind);
  const pairs: Pair[] = [];
  for (let one = 0; one < count; one++) {
    for (let other = 0; other < one; other++) {
      pairs.push({ one, other, apart: apartOf(look(one), look(other)), isFurther: false });
    }
  }
  let kinds = count;
  let evidence: Evidence = { closest: Infinity, merged: 0 };
  let [last, next]: [number[], number[]] = [[], []];
  const large: number[] = [];
  const least = LARGE_SHARE * nearest.length;
  const nearestFirst = (): Pair[] => pairs.sort((a, b) => b.apart - a.apart);
  nearestFirst();
  for (let pair = pairs.pop(); pair !== undefined; pair = pairs.pop()) {
    const { one, other, apart, isFurther } = pair;
    const [from, to] = [kindOf[one] as number, kindOf[other] as number];
    if (from === to) continue;
    const isClose = apart >= LEAST_PARTED && apart < PARTED_FURTHER;
    if (isClose && !isFurther && areParted(even, cellsOf(from), cellsOf(to))) {
      pairs.push({ ...pair, apart: apart * PARTED_FURTHER, isFurther: true });
      nearestFirst();
      continue;
    }
    if (wanted === null ? apart >= 1 : kinds <= wanted) {
      // Looks so much alike that their cells alone part them are asked about, unless it is known how many there are.
      const isAsked = isFurther && wanted === null;
      evidence = { ...evidence, closest: isAsked ? apart / PARTED_FURTHER : apart };
      next = [one, other];
      break;
    }
    evidence = { ...evidence, merged: apart };
    last = [one, other];
    // Beyond 1 they are one by the number that was given alone, which is what that is for.
    const isNearlyApart = apart >= NEARLY_APART && apart <= 1;
    if (isNearlyApart && Math.min(cellsOf(from).length, cellsOf(to).length) >= least) large.push(one);
    kindOf.forEach((kind, i) => kind === from && (kindOf[i] = to));
    kinds--;
  }
  const named = [...new Set(kindOf)];
  const kindsOf = kindOf.map((kind) => named.indexOf(kind));
  const isUnsure = evidence.closest < SURELY_OTHER || mayBeNext(evidence.merged, evidence.closest);
  const doubted = isUnsure ? [...large, ...last, ...next] : large;
  const unsure = wanted === null ? [] : doubted.map((i) => kindsOf[i] as number);
  return { kindOf: kindsOf, evidence, unsure: new Set(unsure) };
}

/** Yarns named in order: the emptiest symbol is the ground, then the commonest first. */
function byNumber(
  kinds: Uint8Array,
  looks: Float64Array,
  kindOf: readonly number[],
): Pick<Sorted, 'yarns' | 'colours'> {
  const ink = (kind: number): number =>
    Math.min(
      ...kindOf.flatMap((of, look) =>
        of === kind
          ? [looks.subarray(look * SYMBOL_NUMBERS, (look + 1) * SYMBOL_NUMBERS).reduce((sum, value) => sum + value, 0)]
          : [],
      ),
    );
  const cells = (kind: number): number => kinds.reduce((sum, of) => sum + (of === kind ? 1 : 0), 0);
  const order = [...new Set(kindOf)].sort((a, b) => cells(b) - cells(a));
  const ground = order.reduce((best, kind) => (ink(kind) < ink(best) ? kind : best), order[0] ?? 0);
  const named = [ground, ...order.filter((kind) => kind !== ground)];
  return {
    yarns: kinds.map((kind) => named.indexOf(kind)),
    colours: named.map((_, place) => STAND_INS[place] ?? '#000000'),
  };
}

/** 0 half way to the next symbol, 1 at the cell's own. */
function marginsOf(
  symbols: Float64Array,
  looks: Float64Array,
  nearest: Uint8Array,
  kindOf: readonly number[],
  own: Float64Array,
): Float32Array {
  const distance = (cell: number, look: number): number =>
    Math.sqrt(squaredDistance(symbols, cell, looks, look, SYMBOL_NUMBERS) / SYMBOL_NUMBERS);
  const usual = kindOf.map((_, look) => middleOf([...own].filter((_, cell) => nearest[cell] === look)));
  return Float32Array.from(nearest, (look, cell) => {
    const here = own[cell] as number;
    if (here > Math.max(STRAY, STRAY_TIMES * (usual[look] as number))) return 0;
    let next = Infinity;
    kindOf.forEach((kind, other) => {
      if (kind !== kindOf[look]) next = Math.min(next, distance(cell, other));
    });
    return next === Infinity ? 1 : (next - here) / (next + here || 1);
  });
}

function middleOf(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
}
