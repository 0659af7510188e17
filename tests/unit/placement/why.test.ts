/** The sentence beside each choice. */
import { describe, expect, it } from 'vitest';
import { parseNeedle } from '@shared/bed/index.ts';
import { edgesOf } from '@shared/piece/index.ts';
import { RULE_KINDS, solvePlacement, type PlacementChoice } from '@shared/placement/index.ts';
import type { PlacementRule } from '@shared/pattern/index.ts';
import { words } from '@shared/words/index.ts';

type Group = readonly [width: number, blankLeft?: number, blankRight?: number];

function sentencesFor(
  stitches: number,
  groups: readonly Group[],
  rule: PlacementRule,
  judge: 'figure' | 'blocks' = 'blocks',
  allowance = 0,
): string[] {
  const choices: PlacementChoice[] = solvePlacement({
    edges: edgesOf(stitches, { oddStitch: 'right', offset: 0 }),
    groups: groups.map(([width, blankLeft = 0, blankRight = 0]) => ({ width, blankLeft, blankRight })),
    seamAllowance: { left: allowance, right: allowance },
    rule,
    judge,
  });
  return choices.map(words.placement.why);
}

describe('the best choice is said to be', () => {
  const sixes: Group[] = [[20], [20]];
  it.each<{ of: string; says: string; choices: string[] }>([
    {
      of: 'even but for rounding',
      choices: sentencesFor(
        120,
        [
          [36, 1],
          [36, 1],
        ],
        { kind: 'seam' },
        'figure',
      ),
      says: 'Both sides alike: 13 stitches at each edge, 24 between; across the seam 26; the seam shows 2 more than between the groups; needles are whole, and an exact share would be 12.5 at each edge and 25 between.',
    },
    {
      of: 'even all the way round',
      choices: sentencesFor(64, sixes, { kind: 'seam' }),
      says: 'Even by the blocks: 6 stitches at each edge, 12 between; the blocks lie 12 apart across the seam; even all the way round.',
    },
    {
      of: 'even beside the seam',
      choices: sentencesFor(64, sixes, { kind: 'seam' }, 'figure', 1),
      says: 'Both sides alike: 7 stitches at each edge, 6 of them clear of the seam, 10 between; seam allowance 2; across the seam 12; the seam shows 2 more than between the groups; needles are whole, and an exact share would be 6.5 at each edge (5.5 clear of the seam) and 11 between.',
    },
    {
      of: 'short of room for its blank columns',
      choices: sentencesFor(40, [[12, 9], [2], [3, 1, 1]], { kind: 'seam' }, 'figure'),
      says: 'Both sides alike: 9 stitches at each edge, 8 in each gap; across the seam 18; the seam shows 10 more than between the groups; the blank columns leave no room for the exact share of 5.67 at each edge and 11.33 between.',
    },
    {
      of: 'one group in the middle',
      choices: sentencesFor(120, [[36]], { kind: 'seam' }, 'figure'),
      says: 'Centred to the eye: 42 stitches at each edge; across the seam 84.',
    },
    {
      of: 'as even as an odd stitch allows',
      choices: sentencesFor(41, [[20]], { kind: 'even' }, 'figure'),
      says: 'As near as it comes, the two sides differing by 1 stitch: 10 stitches at the left edge and 11 at the right; across the seam 21; needles are whole, and an exact share would be 10.5 at each edge.',
    },
    {
      of: 'every space the same',
      choices: sentencesFor(60, [[10], [10], [10], [10]], { kind: 'even' }, 'figure'),
      says: 'Every space the same: 4 stitches at each edge, 4 in each gap; across the seam 8; the seam shows 4 more than between the groups.',
    },
    {
      of: 'as the margins are given',
      choices: sentencesFor(100, [[20], [20], [20], [10]], { kind: 'margins', stitches: 7 }),
      says: 'Margins as given, both sides alike: 7 stitches at each edge, gaps of 5, 6 and 5; the blocks lie 14 apart across the seam; the gaps differ by up to 1; needles are whole, and an exact share would be 5.33 between.',
    },
    {
      of: 'as the gaps are given',
      choices: sentencesFor(100, [[20], [20], [20]], { kind: 'gaps', stitches: 9 }),
      says: 'Gaps as given, margins alike: 11 stitches at each edge, 9 in each gap; the blocks lie 22 apart across the seam; the seam shows 13 more than between the groups.',
    },
    {
      of: 'placed by hand',
      choices: sentencesFor(60, sixes, { kind: 'by-hand', first: [parseNeedle('L28'), parseNeedle('R8')] }, 'figure'),
      says: 'Placed by hand, the two sides differing by 1 stitch: 2 stitches at the left edge and 3 at the right, 15 between; across the seam 5; the seam shows 10 fewer than between the groups.',
    },
    {
      of: 'in the seam',
      choices: sentencesFor(20, [[20]], { kind: 'seam' }, 'figure', 2),
      says: 'Both sides alike: 0 stitches at each edge; the seam allowance of 4 takes 4 of the figure.',
    },
    {
      of: 'one of many gaps',
      // 93 − 60 leaves 33 for six gaps beside margins of 0: 5 each and 3 over.
      choices: sentencesFor(93, [[9], [9], [9], [9], [8], [8], [8]], { kind: 'margins', stitches: 0 }),
      says: 'As near as it comes, the two sides differing by 1 stitch: 0 stitches at each edge, gaps of 5 to 6; the blocks lie 0 apart across the seam; the gaps differ by up to 1; needles are whole, and an exact share would be 5.5 between.',
    },
  ])('$of', ({ choices, says }) => {
    expect(choices[0]).toBe(says);
  });
});

describe('a later choice says what it costs', () => {
  const heads = (sentences: readonly string[]): string[] =>
    sentences.map((sentence) => sentence.split(':')[0] as string);

  it('against the first, where the seam continues', () => {
    const two: Group[] = [
      [36, 1],
      [36, 1],
    ];
    expect(heads(sentencesFor(120, two, { kind: 'seam' }, 'figure')).slice(1, 3)).toEqual([
      'As near as the first, with narrower margins',
      'Both sides alike, but gaps and seam differ by up to 6',
    ]);
  });

  it('against the first, with even spaces', () => {
    expect(heads(sentencesFor(30, [[7], [7], [7]], { kind: 'even' })).slice(1, 5)).toEqual([
      'As near as the first, further to the right',
      'As near the rule as the first, but the gaps differ by up to 1',
      'As near the rule as the first, but the gaps differ by up to 1',
      'Both sides as near as in the first, but the spaces differ by up to 2',
    ]);
  });

  it('against the first, with fixed margins', () => {
    expect(heads(sentencesFor(40, [[9], [9], [9]], { kind: 'margins', stitches: 2 })).slice(1, 4)).toEqual([
      'As near as the first, further to the right',
      'Not as near as the first, the two sides differing by 3 stitches',
      'Not as near as the first, the two sides differing by 3 stitches',
    ]);
    expect(heads(sentencesFor(42, [[9], [9], [9], [9]], { kind: 'margins', stitches: 0 }))[1]).toBe(
      'Both sides alike, but the gaps differ by up to 3',
    );
  });
});

describe('the rules', () => {
  it('have a name and a sentence each', () => {
    expect(RULE_KINDS.map((kind) => words.placement.rules[kind].name)).toEqual([
      'Seam continues',
      'Even spaces',
      'Fixed margins',
      'Fixed gap',
      'By hand',
    ]);
    for (const kind of RULE_KINDS) expect(words.placement.rules[kind].asks).toMatch(/^[A-Z].*\.$/);
  });
});
