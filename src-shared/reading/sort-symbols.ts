/** Cells sorted by the symbol that is drawn into them: a legend in black and white. */
import { findGroups, some, type Evidence } from './clusters.ts';
import { nearestOf, squaredDistance } from './k-means.ts';
import { timesUsual, type Sorted } from './sort-colours.ts';
import { SYMBOL_NUMBERS, SYMBOL_SIDE } from './symbols.ts';

/** Two symbols whose places differ by less than this on the whole (root of the mean square, of the darkest ink) are one. */
const LEAST_DIFFERENCE = 0.08;

/** A symbol drawn to the side comes out as the other but for this much, which is at most such a share of the difference without moving it. */
const MOST_WHEN_MOVED = 0.17;
const MOVED_SHARE = 0.75;

/** Ink paler than this is grain of the paper: a blank chart. */
const LEAST_INK = 0.12;

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

/**
 * Where the number of symbols is known: the next two that would be made one lie
 * at least so far apart, and so many times as far as the last that were; else
 * it may have been the other two.
 */
const SURELY_OTHER = 1.2;
const SURELY_NEXT = 1.5;

/** Cells of one symbol differ by about this at least. */
const LEAST_USUAL = 0.03;

/** `symbols` as `lookAtSymbols` gives them; `wanted` yarns, or null for as many symbols as there are. */
export function sortSymbols(symbols: Float64Array, wanted: number | null): Sorted {
  const count = symbols.length / SYMBOL_NUMBERS;
  const even = inShareOfInk(symbols);
  const looked = some(even, new Uint8Array(count).fill(1), SYMBOL_NUMBERS);
  const { centres: looks } = findGroups(
    looked,
    SYMBOL_NUMBERS,
    null,
    (one, other) => rootMeanSquare(one, other) / LEAST_DIFFERENCE,
  );
  const { kindOf, evidence, unsure } = alike(looks, wanted);
  const nearest = nearestOf(even, looks, SYMBOL_NUMBERS);
  const kinds = nearest.map((look) => kindOf[look] as number);
  const own = Float64Array.from(nearest, (look, cell) =>
    Math.sqrt(squaredDistance(even, cell, looks, look, SYMBOL_NUMBERS) / SYMBOL_NUMBERS),
  );
  return {
    ...byNumber(kinds, looks, kindOf),
    margins: marginsOf(even, looks, nearest, kindOf, own).map((margin, cell) =>
      unsure.has(kinds[cell] as number) ? 0 : margin,
    ),
    distances: timesUsual(own, nearest, LEAST_USUAL),
    strayQuarters: new Uint8Array(count),
    evidence: wanted === null ? evidence : null,
  };
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
function alike(looks: Float64Array, wanted: number | null): Alike {
  const count = looks.length / SYMBOL_NUMBERS;
  const look = (i: number): number[] => [...looks.subarray(i * SYMBOL_NUMBERS, (i + 1) * SYMBOL_NUMBERS)];
  const pairs: { readonly one: number; readonly other: number; readonly apart: number }[] = [];
  for (let one = 0; one < count; one++) {
    for (let other = 0; other < one; other++) pairs.push({ one, other, apart: apartOf(look(one), look(other)) });
  }
  const kindOf = Array.from({ length: count }, (_, i) => i);
  let kinds = count;
  let evidence: Evidence = { closest: Infinity, merged: 0 };
  let [last, next]: [number[], number[]] = [[], []];
  for (const { one, other, apart } of pairs.sort((a, b) => a.apart - b.apart)) {
    const [from, to] = [kindOf[one] as number, kindOf[other] as number];
    if (from === to) continue;
    if (wanted === null ? apart >= 1 : kinds <= wanted) {
      evidence = { ...evidence, closest: apart };
      next = [one, other];
      break;
    }
    evidence = { ...evidence, merged: apart };
    last = [one, other];
    kindOf.forEach((kind, i) => kind === from && (kindOf[i] = to));
    kinds--;
  }
  const named = [...new Set(kindOf)];
  const kindsOf = kindOf.map((kind) => named.indexOf(kind));
  const isUnsure = evidence.closest < Math.max(SURELY_OTHER, SURELY_NEXT * evidence.merged);
  const unsure = wanted !== null && isUnsure ? [...last, ...next].map((i) => kindsOf[i] as number) : [];
  return { kindOf: kindsOf, evidence, unsure: new Set(unsure) };
}

/**
 * How far apart two looks are, below 1 being one symbol: where moving one of them
 * by a place makes them much more alike, it is drawn to the side.
 */
function apartOf(one: readonly number[], other: readonly number[]): number {
  const [here, moved] = [rootMeanSquare(one, other), apartWhenMoved(one, other)];
  return moved < MOVED_SHARE * here ? moved / MOST_WHEN_MOVED : here / LEAST_DIFFERENCE;
}

/** How far apart two looks are when one is moved by up to a place, to whichever side fits best. */
function apartWhenMoved(one: readonly number[], other: readonly number[]): number {
  let least = Infinity;
  for (let dy = -1; dy <= 1; dy++) {
    for (let dx = -1; dx <= 1; dx++) {
      const [here, there]: [number[], number[]] = [[], []];
      for (let y = Math.max(0, -dy); y < Math.min(SYMBOL_SIDE, SYMBOL_SIDE - dy); y++) {
        for (let x = Math.max(0, -dx); x < Math.min(SYMBOL_SIDE, SYMBOL_SIDE - dx); x++) {
          here.push(one[y * SYMBOL_SIDE + x] as number);
          there.push(other[(y + dy) * SYMBOL_SIDE + x + dx] as number);
        }
      }
      least = Math.min(least, rootMeanSquare(here, there));
    }
  }
  return least;
}

function rootMeanSquare(one: readonly number[], other: readonly number[]): number {
  return Math.sqrt(one.reduce((sum, value, i) => sum + (value - (other[i] as number)) ** 2, 0) / one.length);
}

/** Darkness as a share of the darkest ink; nothing where there is no ink at all. */
function inShareOfInk(symbols: Float64Array): Float64Array {
  const darkest = symbols.slice().sort()[Math.floor(symbols.length * 0.995)] ?? 0;
  return darkest < LEAST_INK ? new Float64Array(symbols.length) : symbols.map((value) => value / darkest);
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
