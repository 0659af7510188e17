/**
 * Placing against trying everything.
 *
 * The other side is written from the five points of ranking and nothing else:
 * it walks every placement of the blocks, counts the spaces needle by needle,
 * and sorts. It shares no code with the solver.
 */
import { describe, expect, it } from 'vitest';
import {
  SOLVED_KINDS,
  solvePlacement,
  startRule,
  type GroupOnNeedles,
  type PlacementQuestion,
} from '@shared/placement/index.ts';
import type { SolvedRule } from '@shared/pattern/index.ts';
import type { Slot } from '@shared/bed/index.ts';

/** A question that is not answered by hand. */
type SolvedQuestion = PlacementQuestion & { readonly rule: SolvedRule };

/** One placement with the numbers it is ranked by, in that order; smaller is better. */
interface Tried {
  readonly first: number[];
  readonly rank: number[];
}

/** As many choices as the program offers. */
const OFFERED = 8;

/** The judged spaces of a placement, margins net of the seam allowance. */
interface Net {
  readonly left: number;
  readonly right: number;
  readonly gaps: readonly number[];
}

const spread = (of: readonly number[]): number => (of.length === 0 ? 0 : Math.max(...of) - Math.min(...of));

/** How far from each rule spaces are, or null where what it fixes is not kept: the rule's own sentence, once more. */
const FROM_RULE: {
  readonly [Kind in SolvedRule['kind']]: (net: Net, rule: Extract<SolvedRule, { kind: Kind }>) => number | null;
} = {
  seam: ({ left, right, gaps }) => Math.max(0, ...gaps.map((gap) => Math.abs(gap - (left + right)))),
  even: ({ left, right, gaps }) => spread([left, ...gaps, right]),
  margins: ({ left, right, gaps }, { stitches }) => (left === stitches && right === stitches ? spread(gaps) : null),
  gaps: ({ gaps }, { stitches }) => (gaps.every((gap) => gap === stitches) ? 0 : null),
};

/** Goes through every placement that the rule allows: the best ones, best first, and how many there are. */
function tryEverything(question: SolvedQuestion): { readonly best: readonly Tried[]; readonly count: number } {
  const { edges, groups, rule } = question;
  const best: Tried[] = [];
  let count = 0;
  const first: number[] = [];
  const keep = (rank: number[]): void => {
    let at = best.length;
    while (at > 0 && ranksBefore(rank, (best[at - 1] as Tried).rank)) at--;
    if (at === OFFERED) return;
    best.splice(at, 0, { first: [...first], rank });
    best.length = Math.min(best.length, OFFERED);
  };
  const place = (index: number, from: number): void => {
    if (index === groups.length) {
      const rank = rankOf(question, rule, first);
      if (!rank) return;
      count++;
      keep(rank);
      return;
    }
    const { width } = groups[index] as GroupOnNeedles;
    for (let start = from; start + width - 1 <= edges.last; start++) {
      first[index] = start;
      place(index + 1, start + width);
    }
  };
  place(0, edges.first);
  return { best, count };
}

/** True if the first number that differs is smaller. */
function ranksBefore(one: readonly number[], other: readonly number[]): boolean {
  const at = one.findIndex((value, i) => value !== other[i]);
  return at >= 0 && (one[at] as number) < (other[at] as number);
}

/** The numbers a placement is ranked by, or null where the rule's fixed spaces are not kept. */
function rankOf({ edges, groups, seamAllowance, judge }: PlacementQuestion, rule: SolvedRule, first: number[]) {
  const eye = judge === 'figure';
  const begins = groups.map((group, g) => (first[g] as number) + (eye ? group.blankLeft : 0));
  const ends = groups.map((group, g) => (first[g] as number) + group.width - (eye ? group.blankRight : 0));
  const left = (begins[0] as number) - edges.first - seamAllowance.left;
  const right = edges.last + 1 - (ends.at(-1) as number) - seamAllowance.right;
  const gaps = begins.slice(1).map((begin, g) => begin - (ends[g] as number));
  const spaces = [left, ...gaps, right];

  let imbalance = 0;
  for (let i = 0; i < spaces.length - 1 - i; i++) {
    imbalance += Math.abs((spaces[i] as number) - (spaces[spaces.length - 1 - i] as number));
  }
  const fromRule = (FROM_RULE[rule.kind] as (net: Net, rule: SolvedRule) => number | null)({ left, right, gaps }, rule);
  if (fromRule === null) return null;
  return [imbalance, fromRule, spread(gaps), -(left + right), ...first];
}

/** Whole numbers from 0 to below `below`, the same ones on every run (mulberry32). */
function numbersFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}

/** Groups up to `widest` that together take no more than `stitches`, with blank columns on either side. */
function someGroups(below: (n: number) => number, stitches: number, count: number, widest: number): GroupOnNeedles[] {
  const groups: GroupOnNeedles[] = [];
  let left = stitches - count;
  for (let g = 0; g < count; g++) {
    const more = below(Math.min(left + 1, widest));
    left -= more;
    const width = 1 + more;
    const blankLeft = below(Math.min(width, 4));
    groups.push({ width, blankLeft, blankRight: below(Math.min(width - blankLeft, 4)) });
  }
  return groups;
}

function questionOn(
  stitches: number,
  groups: readonly GroupOnNeedles[],
  seamAllowance: { left: number; right: number },
  rule: SolvedRule,
  judge: 'figure' | 'blocks',
): SolvedQuestion {
  const first = 0 - Math.floor(stitches / 2);
  return { edges: { first: first as Slot, last: (first + stitches - 1) as Slot }, groups, seamAllowance, rule, judge };
}

/** What the solver returns, as first needles; the name of the problem where it refuses. */
function solved(question: PlacementQuestion): number[][] | string {
  try {
    return solvePlacement(question).map(({ groups }) => groups.map(({ block }) => block.first));
  } catch (thrown) {
    return (thrown as Error).message;
  }
}

function expectTheSame(question: SolvedQuestion): number {
  const { best, count } = tryEverything(question);
  const expected = count > 0 ? best.map(({ first }) => first) : 'rule-cannot-be-met';
  const found = solved(question);
  // Compared as text first: thousands of questions, and the tool's own comparison is slow.
  if (String(found) !== String(expected)) expect(found, JSON.stringify(question)).toEqual(expected);
  return count;
}

/** Every rule there is, one that takes a number with one that may be met. */
function rulesFor(below: (n: number) => number, stitches: number): SolvedRule[] {
  return SOLVED_KINDS.map((kind) => startRule(kind, null)).map((rule) =>
    'stitches' in rule ? { ...rule, stitches: below(Math.max(1, stitches >> 2)) } : rule,
  );
}

/** Puts `samples` rows of `count` groups on a piece under every rule and both ways of judging; returns the placements tried. */
function tryOnPiece(below: (n: number) => number, stitches: number, count: number, samples: number): number {
  let placements = 0;
  for (const judge of ['figure', 'blocks'] as const) {
    for (let sample = 0; sample < samples; sample++) {
      const groups = someGroups(below, stitches, count, sample % 2 === 0 ? 13 : 3);
      const allowance = { left: below(4), right: below(4) };
      for (const rule of rulesFor(below, stitches)) {
        placements += expectTheSame(questionOn(stitches, groups, allowance, rule, judge));
      }
    }
  }
  return placements;
}

describe('placing finds what trying every placement finds', () => {
  it.each([
    { count: 1, samples: 3 },
    { count: 2, samples: 4 },
    { count: 3, samples: 4 },
  ])('on every piece up to 48 stitches with $count group(s)', ({ count, samples }) => {
    const below = numbersFrom(count);
    let placements = 0;
    for (let stitches = count; stitches <= 48; stitches++) {
      placements += tryOnPiece(below, stitches, count, samples);
    }
    expect(placements).toBeGreaterThan(10_000);
  });

  // Four groups and more have pairs of gaps inside pairs of gaps, and a middle gap or none.
  it.each([
    { count: 4, stitches: 20 },
    { count: 5, stitches: 18 },
    { count: 6, stitches: 18 },
    { count: 7, stitches: 18 },
    { count: 8, stitches: 19 },
  ])('with $count groups on pieces up to $stitches stitches', ({ count, stitches }) => {
    const below = numbersFrom(count);
    let placements = 0;
    for (let width = count; width <= stitches; width++) placements += tryOnPiece(below, width, count, 8);
    expect(placements).toBeGreaterThan(10_000);
  });

  it('where the level of least imbalance has few placements and the next has many', () => {
    // Blank columns at one end force the first levels; their few placements are to come first.
    const groups = [
      { width: 12, blankLeft: 9, blankRight: 0 },
      { width: 2, blankLeft: 0, blankRight: 0 },
      { width: 3, blankLeft: 1, blankRight: 1 },
    ];
    for (const kind of ['seam', 'even'] as const) {
      for (let stitches = 17; stitches <= 40; stitches++) {
        expectTheSame(questionOn(stitches, groups, { left: 0, right: 0 }, { kind }, 'figure'));
      }
    }
  });
});
