/** What placing refuses, by name and with its numbers, and what is reported by hand. */
import { describe, expect, it } from 'vitest';
import { parseNeedle, type Slot } from '@shared/bed/index.ts';
import { edgesOf } from '@shared/piece/index.ts';
import { solvePlacement, type GroupOnNeedles, type PlacementQuestion } from '@shared/placement/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import type { PlacementRule } from '@shared/pattern/index.ts';
import { words } from '@shared/words/index.ts';

const plain = (width: number): GroupOnNeedles => ({ width, blankLeft: 0, blankRight: 0 });
const byHand = (...needles: string[]): PlacementRule => ({ kind: 'by-hand', first: needles.map(parseNeedle) });

function question(stitches: number, groups: GroupOnNeedles[], rule: PlacementRule, allowance = 0): PlacementQuestion {
  return {
    edges: edgesOf(stitches, { oddStitch: 'right', offset: 0 }),
    groups,
    seamAllowance: { left: allowance, right: allowance },
    rule,
    judge: 'figure',
  };
}

function refusal(asked: PlacementQuestion) {
  try {
    solvePlacement(asked);
  } catch (thrown) {
    return problemOf(thrown);
  }
  throw new Error('was not refused');
}

describe('placing refuses', () => {
  const margins = (stitches: number): PlacementRule => ({ kind: 'margins', stitches });
  const gaps = (stitches: number): PlacementRule => ({ kind: 'gaps', stitches });
  const blankBoth: GroupOnNeedles = { width: 10, blankLeft: 2, blankRight: 1 };

  it.each([
    {
      what: 'groups wider than the piece',
      asked: question(40, [plain(21), plain(20)], { kind: 'seam' }),
      code: 'groups-wider-than-piece',
      facts: { needed: 41, available: 40, stitches: 40 },
      says: 'The groups take 41 stitches and the piece has 40.',
    },
    {
      // 2 · 6 and 2 · 15 are 42.
      what: 'margins too wide for the piece',
      asked: question(40, [plain(15), plain(15)], margins(6)),
      code: 'rule-cannot-be-met',
      facts: { rule: 'margins', given: 6, least: 0, needed: 42, available: 40 },
      says: 'With margins of 6 the groups need 42 stitches and have 40.',
    },
    {
      // 2 · 4 net, 2 · 2 for the seam, 2 · 15.
      what: 'margins too wide once the seam has its stitches',
      asked: question(41, [plain(15), plain(15)], margins(4), 2),
      code: 'rule-cannot-be-met',
      facts: { rule: 'margins', given: 4, least: -2, needed: 42, available: 41 },
      says: 'With margins of 4 the groups need 42 stitches and have 41.',
    },
    {
      // The figures 7 and 7, margins of 3 and between them the blank columns 1 + 2.
      what: 'margins that would push blocks into one another',
      asked: question(22, [blankBoth, blankBoth], margins(3)),
      code: 'rule-cannot-be-met',
      facts: { rule: 'margins', given: 3, least: 2, needed: 23, available: 22 },
      says: 'With margins of 3 the groups need 23 stitches and have 22.',
    },
    {
      what: 'margins narrower than the blank columns in them',
      asked: question(60, [blankBoth, blankBoth], margins(1)),
      code: 'rule-cannot-be-met',
      facts: { rule: 'margins', given: 1, least: 2, needed: 19, available: 60 },
      says: 'With margins of 1 the blank columns at the edge of a group would leave the piece.',
    },
    {
      what: 'margins beside one group that do not take all there is',
      asked: question(40, [plain(20)], margins(9)),
      code: 'rule-cannot-be-met',
      facts: { rule: 'margins', given: 9, least: 0, needed: 38, available: 40 },
      says: 'With margins of 9 one group leaves 2 stitches over, and there is no gap to take them.',
    },
    {
      what: 'a gap too wide for the piece',
      asked: question(40, [plain(15), plain(15)], gaps(11)),
      code: 'rule-cannot-be-met',
      facts: { rule: 'gaps', given: 11, least: 0, needed: 41, available: 40 },
      says: 'With gaps of 11 the groups need 41 stitches and have 40.',
    },
    {
      what: 'a gap narrower than the blank columns in it',
      asked: question(60, [blankBoth, blankBoth], gaps(2)),
      code: 'rule-cannot-be-met',
      facts: { rule: 'gaps', given: 2, least: 3, needed: 19, available: 60 },
      says: 'With gaps of 2 the blank columns at the edge of a group would overlap those of the next group.',
    },
    {
      what: 'too few first needles',
      asked: question(60, [plain(10), plain(10)], byHand('L20')),
      code: 'by-hand-count',
      facts: { given: 1, groups: 2 },
      says: '1 left-hand needle for 2 groups.',
    },
    {
      what: 'a group that begins beside the piece',
      asked: question(60, [plain(10), plain(10)], byHand('L31', 'R1')),
      code: 'needle-not-on-piece',
      facts: { needle: 'L31', first: 'L30', last: 'R30' },
      says: 'A group at L31 would leave the piece, which stands on L30–R30.',
    },
    {
      what: 'a group that ends beside the piece',
      asked: question(60, [plain(10), plain(10)], byHand('L20', 'R22')),
      code: 'needle-not-on-piece',
      facts: { needle: 'R22', first: 'L30', last: 'R30' },
      says: 'A group at R22 would leave the piece, which stands on L30–R30.',
    },
    {
      // L20–L11 and L12–L3 share L12 and L11.
      what: 'groups that overlap',
      asked: question(60, [plain(10), plain(10)], byHand('L20', 'L12')),
      code: 'groups-overlap',
      facts: { left: 1, right: 2, stitches: 2 },
      says: 'Groups 1 and 2 overlap by 2 stitches.',
    },
    {
      what: 'first needles that are not given from left to right',
      asked: question(60, [plain(10), plain(10)], byHand('R1', 'L20')),
      code: 'groups-out-of-order',
      facts: { left: 1, right: 2 },
      says: 'Group 2 lies to the left of group 1.',
    },
  ])('$what', ({ asked, code, facts, says }) => {
    const problem = refusal(asked);
    expect(problem).toEqual({ code, where: null, facts });
    expect(words.problems.say(problem).what).toBe(says);
  });

  it('nothing that just fits', () => {
    expect(solvePlacement(question(40, [plain(15), plain(15)], margins(5)))).toHaveLength(1);
    expect(solvePlacement(question(40, [plain(15), plain(15)], gaps(10)))).toHaveLength(1);
    expect(solvePlacement(question(40, [plain(20)], margins(10)))).toHaveLength(1);
    expect(solvePlacement(question(23, [blankBoth, blankBoth], margins(3)))).toHaveLength(1);
    // One group has no gap, so any will do.
    expect(solvePlacement(question(40, [plain(20)], gaps(50)))).toHaveLength(8);
  });
});

describe('placing by hand', () => {
  it('reports the spaces of the needles given', () => {
    // L30–R30. L20–L11, of which L18–L12 is seen, and R6–R15, of which R8–R14.
    // Seen: L30–L19 is 12; L11–R7 is 18; R15–R30 is 16. Net of 1 each: 11 and 15, so an imbalance of 4.
    const group: GroupOnNeedles = { width: 10, blankLeft: 2, blankRight: 1 };
    const choices = solvePlacement(question(60, [group, group], byHand('L20', 'R6'), 1));
    expect(choices).toHaveLength(1);
    expect(choices[0]).toMatchObject({
      figure: { margins: [12, 16], gaps: [18] },
      blocks: { margins: [10, 15], gaps: [15] },
      acrossSeam: 26,
      imbalance: 4,
      fromRule: 0,
      reason: { rule: 'by-hand', ideal: null, behindBy: null },
    });
    expect(choices[0]?.groups[1]?.block.first).toBe(5 as Slot);
  });

  it('lets groups touch each other and the edges', () => {
    expect(solvePlacement(question(20, [plain(10), plain(10)], byHand('L10', 'R1')))[0]).toMatchObject({
      blocks: { margins: [0, 0], gaps: [0] },
    });
  });
});
