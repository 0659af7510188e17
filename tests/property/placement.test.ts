/** What must hold of every placing, whatever the piece and its groups. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { widthOf, type Slot } from '@shared/bed/index.ts';
import {
  SOLVED_KINDS,
  solvePlacement,
  startRule,
  type GroupOnNeedles,
  type PlacementChoice,
  type PlacementQuestion,
  type Spaces,
} from '@shared/placement/index.ts';
import { ProblemError } from '@shared/problem/index.ts';
import type { SolvedRule } from '@shared/pattern/index.ts';

const group: fc.Arbitrary<GroupOnNeedles> = fc
  .tuple(fc.integer({ min: 1, max: 24 }), fc.nat(), fc.nat())
  .map(([width, left, right]) => {
    const blankLeft = left % width;
    return { width, blankLeft, blankRight: right % (width - blankLeft) };
  });

/** Every rule there is; those that take a number with a small one. */
const rule: fc.Arbitrary<SolvedRule> = fc
  .record({ kind: fc.constantFrom(...SOLVED_KINDS), stitches: fc.integer({ min: 0, max: 12 }) })
  .map(({ kind, stitches }) => {
    const start = startRule(kind, null);
    return 'stitches' in start ? { ...start, stitches } : start;
  });

/** Up to twelve groups with up to 80 needles to spare. */
const question: fc.Arbitrary<PlacementQuestion> = fc
  .record({
    groups: fc.array(group, { minLength: 1, maxLength: 12 }),
    spare: fc.integer({ min: 0, max: 80 }),
    first: fc.integer({ min: -150, max: 20 }),
    seamAllowance: fc.record({ left: fc.integer({ min: 0, max: 4 }), right: fc.integer({ min: 0, max: 4 }) }),
    rule,
    judge: fc.constantFrom('figure' as const, 'blocks' as const),
  })
  .map(({ spare, first, ...rest }) => {
    const stitches = spare + rest.groups.reduce((sum, { width }) => sum + width, 0);
    return { ...rest, edges: { first: first as Slot, last: (first + stitches - 1) as Slot } };
  });

/** The choices, or none where the rule cannot be met. */
function choicesFor(asked: PlacementQuestion, most = 8): PlacementChoice[] {
  try {
    return solvePlacement(asked, most);
  } catch (thrown) {
    if (thrown instanceof ProblemError && thrown.problem.code === 'rule-cannot-be-met') return [];
    throw thrown;
  }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
const spacesOf = ({ margins, gaps }: Spaces): number[] => [margins[0], ...gaps, margins[1]];
const judged = (choice: PlacementChoice, { judge }: PlacementQuestion): Spaces =>
  judge === 'figure' ? choice.figure : choice.blocks;

describe('placing, on any piece', () => {
  it('counts every stitch once, by the blocks and by the figure', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const stitches = widthOf(asked.edges);
        for (const { groups, blocks, figure } of choicesFor(asked)) {
          expect(sum(spacesOf(blocks)) + sum(groups.map(({ block }) => widthOf(block)))).toBe(stitches);
          expect(sum(spacesOf(figure)) + sum(groups.map(({ figure: seen }) => widthOf(seen)))).toBe(stitches);
        }
      }),
    );
  });

  it('keeps every block on the piece and clear of its neighbours, and every figure within its block', () => {
    fc.assert(
      fc.property(question, (asked) => {
        for (const { groups } of choicesFor(asked)) {
          let next: number = asked.edges.first;
          groups.forEach(({ block, figure }, index) => {
            const { width, blankLeft, blankRight } = asked.groups[index] as GroupOnNeedles;
            expect(block.first).toBeGreaterThanOrEqual(next);
            expect(widthOf(block)).toBe(width);
            expect([figure.first - block.first, block.last - figure.last]).toEqual([blankLeft, blankRight]);
            next = block.last + 1;
          });
          expect(next - 1).toBeLessThanOrEqual(asked.edges.last);
        }
      }),
    );
  });

  it('says the gap across the seam as both judged margins less the allowances', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const { left, right } = asked.seamAllowance;
        for (const choice of choicesFor(asked)) {
          expect(choice.acrossSeam).toBe(sum(judged(choice, asked).margins) - left - right);
        }
      }),
    );
  });

  it('keeps the margins or the gaps that a rule fixes', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const { left, right } = asked.seamAllowance;
        for (const choice of choicesFor(asked)) {
          const { margins, gaps } = judged(choice, asked);
          if (asked.rule.kind === 'margins') {
            expect(margins).toEqual([asked.rule.stitches + left, asked.rule.stitches + right]);
          }
          if (asked.rule.kind === 'gaps') expect(new Set([...gaps, asked.rule.stitches]).size).toBe(1);
        }
      }),
    );
  });

  it('offers no placement twice and none out of order, and more of them change nothing in the first', () => {
    fc.assert(
      fc.property(question, fc.integer({ min: 1, max: 7 }), (asked, fewer) => {
        const choices = choicesFor(asked);
        const ranks = choices.map((choice) => [...rankOf(choice, asked), ...firstNeedles(choice)]);
        ranks.slice(1).forEach((rank, i) => expect(compare(ranks[i] as number[], rank)).toBeLessThan(0));
        expect(choicesFor(asked, fewer)).toEqual(choices.slice(0, fewer));
      }),
    );
  });
});

/** The points of ranking before the last, smaller is better. */
function rankOf(choice: PlacementChoice, asked: PlacementQuestion): number[] {
  const { gaps } = judged(choice, asked);
  const spread = gaps.length === 0 ? 0 : Math.max(...gaps) - Math.min(...gaps);
  return [choice.imbalance, choice.fromRule, spread, -choice.acrossSeam];
}

const firstNeedles = ({ groups }: PlacementChoice): number[] => groups.map(({ block }) => block.first);

function compare(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((value, i) => value !== b[i]);
  return index < 0 ? 0 : (a[index] as number) - (b[index] as number);
}

describe('a mirrored piece', () => {
  const mirror = (asked: PlacementQuestion): PlacementQuestion => ({
    ...asked,
    // Slot s lies opposite slot −1 − s.
    edges: { first: (-1 - asked.edges.last) as Slot, last: (-1 - asked.edges.first) as Slot },
    groups: asked.groups
      .map(({ width, blankLeft, blankRight }) => ({ width, blankLeft: blankRight, blankRight: blankLeft }))
      .reverse(),
    seamAllowance: { left: asked.seamAllowance.right, right: asked.seamAllowance.left },
  });

  it('has the mirrored choices, but for which of equals stands further left', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const most = 24;
        const here = choicesFor(asked, most);
        const there = choicesFor(mirror(asked), most);
        const ranks = here.map((choice) => rankOf(choice, asked));
        expect(there.map((choice) => rankOf(choice, asked))).toEqual(ranks);
        // Equals that are all on both lists mirror each other; the last ones may be cut off.
        const last = ranks.at(-1) ?? [];
        const isWhole = (choice: PlacementChoice): boolean =>
          here.length < most || compare(rankOf(choice, asked), last) < 0;
        const lying = (choices: PlacementChoice[], turn: (spaces: number[]) => number[]): string[] =>
          choices
            .filter(isWhole)
            .map(({ blocks }) => turn(spacesOf(blocks)).join())
            .sort();
        expect(lying(there, (spaces) => spaces.reverse())).toEqual(lying(here, (spaces) => spaces));
      }),
    );
  });
});

describe('two stitches more', () => {
  it('never make the best choice less balanced', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const wider = { ...asked, edges: { ...asked.edges, last: (asked.edges.last + 2) as Slot } };
        const [before] = choicesFor(asked, 1);
        const [after] = choicesFor(wider, 1);
        // One group between fixed margins fits one width only.
        if (!before || (asked.rule.kind === 'margins' && asked.groups.length === 1)) return;
        expect(after?.imbalance).toBeLessThanOrEqual(before.imbalance);
      }),
    );
  });
});

describe('many groups', () => {
  // More than any search by trial would end with: a hundred spaces, most of them held open by blank columns.
  it('of unlike widths are placed all the same', () => {
    const many = fc.tuple(question, fc.array(group, { minLength: 40, maxLength: 90 })).map(([asked, groups]) => {
      const stitches = 150 + sum(groups.map(({ width }) => width));
      return { ...asked, groups, edges: { first: 0 as Slot, last: (stitches - 1) as Slot } };
    });
    fc.assert(
      fc.property(many, (asked) => {
        const choices = choicesFor(asked);
        const ranks = choices.map((choice) => [...rankOf(choice, asked), ...firstNeedles(choice)]);
        ranks.slice(1).forEach((rank, i) => expect(compare(ranks[i] as number[], rank)).toBeLessThan(0));
        if (asked.rule.kind === 'seam' || asked.rule.kind === 'even') expect(choices).toHaveLength(8);
      }),
      { numRuns: 40 },
    );
  });

  it('have all their spaces the same where that comes out in whole needles', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), fc.integer({ min: 0, max: 9 }), (count, each) => {
        const groups = new Array<GroupOnNeedles>(count).fill({ width: 4, blankLeft: 0, blankRight: 0 });
        const stitches = 4 * count + each * (count + 1);
        const [choice] = solvePlacement({
          edges: { first: 0 as Slot, last: (stitches - 1) as Slot },
          groups,
          seamAllowance: { left: 0, right: 0 },
          rule: { kind: 'even' },
          judge: 'blocks',
        });
        expect(choice).toMatchObject({ imbalance: 0, fromRule: 0 });
        expect(new Set(spacesOf((choice as PlacementChoice).blocks))).toEqual(new Set([each]));
      }),
    );
  });
});
