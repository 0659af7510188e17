/**
 * Placings worked by hand.
 *
 * An even piece of W stitches stands on L(W/2)–R(W/2); an odd one has its
 * extra stitch on the right. "Total" is what all judged spaces sum to, the
 * seam allowances taken off. m is a margin net of its allowance, g a gap.
 */
import { describe, expect, it } from 'vitest';
import { label } from '@shared/bed/index.ts';
import { edgesOf } from '@shared/piece/index.ts';
import {
  clearOf,
  solvePlacement,
  startRule,
  type PlacementChoice,
  type PlacementQuestion,
} from '@shared/placement/index.ts';
import type { PlacementRule } from '@shared/pattern/index.ts';

type Group = readonly [width: number, blankLeft: number, blankRight: number];

interface Placing {
  stitches: number;
  groups: readonly Group[];
  rule?: PlacementRule;
  judge?: 'figure' | 'blocks';
  allowance?: readonly [left: number, right: number];
}

function place({ stitches, groups, rule = { kind: 'seam' }, judge = 'figure', allowance = [0, 0] }: Placing) {
  const question: PlacementQuestion = {
    edges: edgesOf(stitches, { oddStitch: 'right', offset: 0 }),
    groups: groups.map(([width, blankLeft, blankRight]) => ({ width, blankLeft, blankRight })),
    seamAllowance: { left: allowance[0], right: allowance[1] },
    rule,
    judge,
  };
  return solvePlacement(question);
}

const best = (placing: Placing): PlacementChoice => place(placing)[0] as PlacementChoice;
const needles = ({ groups }: PlacementChoice): string[] =>
  groups.map(({ block }) => `${label(block.first)}–${label(block.last)}`);
const spaces = ({ margins, gaps }: PlacementChoice['figure']): number[] => [margins[0], ...gaps, margins[1]];

describe('placing two groups of three 12-stitch copies, first column blank, on 120 stitches', () => {
  // common practice, no source
  const placing: Placing = {
    stitches: 120,
    groups: [
      [36, 1, 0],
      [36, 1, 0],
    ],
  };

  it('leaves 12, 24 and 12 by pattern blocks', () => {
    const choice = best({ ...placing, judge: 'blocks' });
    expect(spaces(choice.blocks)).toEqual([12, 24, 12]);
    expect(choice).toMatchObject({ acrossSeam: 24, imbalance: 0, fromRule: 0 });
  });

  it('stands on L48–L13 and R12–R47 by the visible figure', () => {
    const choice = best(placing);
    expect(needles(choice)).toEqual(['L48–L13', 'R12–R47']);
    expect(spaces(choice.blocks)).toEqual([12, 23, 13]);
    expect(spaces(choice.figure)).toEqual([13, 24, 13]);
    expect(choice.groups.map(({ figure }) => [label(figure.first), label(figure.last)])).toEqual([
      ['L47', 'L13'],
      ['R13', 'R47'],
    ]);
    // Total 120 − 2·35 = 50. m 13, g 24: the seam shows 26, 2 off. m 12, g 26: 24, 2 off too, but narrower margins.
    expect(choice).toMatchObject({ acrossSeam: 26, imbalance: 0, fromRule: 2 });
    expect(place(placing)[1]).toMatchObject({ figure: { margins: [12, 12], gaps: [26] } });
  });
});

describe('placing one group', () => {
  it('of 36 stitches in the middle of 120 starts it on L18 by pattern blocks', () => {
    // common practice, no source
    expect(needles(best({ stitches: 120, groups: [[36, 0, 0]], judge: 'blocks' }))).toEqual(['L18–R18']);
    // A blank first column does not count by blocks.
    expect(needles(best({ stitches: 120, groups: [[36, 1, 0]], judge: 'blocks' }))).toEqual(['L18–R18']);
  });

  it('on an odd piece is exact where the figure is odd', () => {
    // L50–R51, figure 35: total 66, so 33 on either side; the block starts one needle earlier, at 32: L50 − 32 = L18.
    const choice = best({ stitches: 101, groups: [[36, 1, 0]] });
    expect(needles(choice)).toEqual(['L18–R18']);
    expect(spaces(choice.figure)).toEqual([33, 33]);
    expect(spaces(choice.blocks)).toEqual([32, 33]);
  });

  it('that cannot stand in the middle goes to the left first', () => {
    // L50–R51, 36 wide: total 65, so 32 and 33 or 33 and 32.
    const choices = place({ stitches: 101, groups: [[36, 0, 0]], judge: 'blocks', rule: { kind: 'even' } });
    expect(choices.slice(0, 3).map(({ blocks }) => blocks.margins)).toEqual([
      [32, 33],
      [33, 32],
      [31, 34],
    ]);
    // Nothing but margins, so even spaces ask that they be alike.
    expect(choices.slice(0, 3).map(({ fromRule }) => fromRule)).toEqual([1, 1, 3]);
  });

  it('has no gap to compare with the seam', () => {
    expect(place({ stitches: 40, groups: [[10, 0, 0]] }).map(({ fromRule }) => fromRule)).toEqual(Array(8).fill(0));
  });
});

describe('placing so that the seam continues', () => {
  it('sets two even groups on an odd piece', () => {
    // L60–R61, total 121 − 60 = 61. g = 61 − 2m against 2m: m 15 gives 31 and 30, 1 off; m 16 gives 29 and 32.
    const choice = best({
      stitches: 121,
      judge: 'blocks',
      groups: [
        [30, 0, 0],
        [30, 0, 0],
      ],
    });
    expect(spaces(choice.blocks)).toEqual([15, 31, 15]);
    // L60 and 15 plain needles: L45–L16; then 31 needles L15–R16.
    expect(needles(choice)).toEqual(['L45–L16', 'R17–R46']);
    expect(choice).toMatchObject({ imbalance: 0, fromRule: 1, acrossSeam: 30 });
  });

  it('counts blank columns on both sides as space', () => {
    // L45–R45, figures 24 − 2 − 3 = 19: total 52. g 26 and m 13 are exact.
    // Blocks: 13 − 2 = 11, 26 − 3 − 2 = 21, 13 − 3 = 10.
    const choice = best({
      stitches: 90,
      groups: [
        [24, 2, 3],
        [24, 2, 3],
      ],
    });
    expect(spaces(choice.figure)).toEqual([13, 26, 13]);
    expect(spaces(choice.blocks)).toEqual([11, 21, 10]);
    expect(needles(choice)).toEqual(['L34–L11', 'R12–R35']);
    expect(choice.fromRule).toBe(0);
  });

  // Two groups of 20 on 64 by blocks: 24 to share, the allowances taken off first.
  it.each([
    // Total 24: m 6, g 12, exact.
    { allowance: [0, 0] as const, gross: [6, 12, 6], acrossSeam: 12, fromRule: 0 },
    // Total 22: m 6, g 10 shows 12 at the seam; m 5, g 12 shows 10. Both 2 off, so the wider margins.
    { allowance: [1, 1] as const, gross: [7, 10, 7], acrossSeam: 12, fromRule: 2 },
    // Total 20: m 5, g 10, exact.
    { allowance: [2, 2] as const, gross: [7, 10, 7], acrossSeam: 10, fromRule: 0 },
    // Total 21: m 5 on both sides, g 11 against 10. Net alike, so one stitch more stands on the right.
    { allowance: [1, 2] as const, gross: [6, 11, 7], acrossSeam: 10, fromRule: 1 },
  ])('takes allowances of $allowance off the margins', ({ allowance, gross, acrossSeam, fromRule }) => {
    const groups: Group[] = [
      [20, 0, 0],
      [20, 0, 0],
    ];
    const choice = best({ stitches: 64, groups, judge: 'blocks', allowance });
    expect(spaces(choice.blocks)).toEqual(gross);
    expect(choice).toMatchObject({ acrossSeam, fromRule, imbalance: 0 });
  });
});

describe('placing with even spaces', () => {
  it('sets unlike groups', () => {
    // L50–R50, total 100 − 30 = 70. m 23, g 24 differ by 1; m 24, g 22 by 2.
    // L50 and 23 needles: L27–L8; then 24 needles L7–R17.
    const choice = best({
      stitches: 100,
      rule: { kind: 'even' },
      judge: 'blocks',
      groups: [
        [20, 0, 0],
        [10, 0, 0],
      ],
    });
    expect(spaces(choice.blocks)).toEqual([23, 24, 23]);
    expect(needles(choice)).toEqual(['L27–L8', 'R18–R27']);
    expect(choice.fromRule).toBe(1);
  });

  it('gives an odd stitch to the margins rather than to the gaps', () => {
    // Three groups of 7 on 30, total 9 for m g g m: 2 each and 1 over, which cannot be mirrored: imbalance 1.
    // 3 2 2 2 and 2 2 2 3 have their gaps alike; of these the first margin smaller lies further left.
    const groups: Group[] = [
      [7, 0, 0],
      [7, 0, 0],
      [7, 0, 0],
    ];
    const choices = place({ stitches: 30, groups, rule: { kind: 'even' }, judge: 'blocks' });
    expect(choices.slice(0, 4).map(({ blocks }) => spaces(blocks))).toEqual([
      [2, 2, 2, 3],
      [3, 2, 2, 2],
      [2, 2, 3, 2],
      [2, 3, 2, 2],
    ]);
    expect(choices.slice(0, 4).map(({ reason }) => reason.behindBy)).toEqual([
      null,
      'further-right',
      'gap-spread',
      'gap-spread',
    ]);
  });
});

describe('placing with fixed margins', () => {
  it('shares out gaps that do not divide', () => {
    // L50–R50, groups of 20, 20, 20 and 10: total 30, less 2 · 7 leaves 16 for three gaps: 5 6 5 is mirrored, 1 apart.
    const groups: Group[] = [
      [20, 0, 0],
      [20, 0, 0],
      [20, 0, 0],
      [10, 0, 0],
    ];
    const choice = best({ stitches: 100, groups, judge: 'blocks', rule: { kind: 'margins', stitches: 7 } });
    expect(spaces(choice.blocks)).toEqual([7, 5, 6, 5, 7]);
    // L50 and 7: L43–L24, 5, L18–R2, 6, R9–R28, 5, R34–R43.
    expect(needles(choice)).toEqual(['L43–L24', 'L18–R2', 'R9–R28', 'R34–R43']);
    expect(choice).toMatchObject({ imbalance: 0, fromRule: 1, acrossSeam: 14 });
  });

  it('leaves them beside the seam allowance', () => {
    // 60 stitches, figures 10 and 10, total 60 − 20 − 3 = 37: margins 4 net are 5 and 6 in all, the gap 29.
    const groups: Group[] = [
      [12, 1, 1],
      [12, 1, 1],
    ];
    const choice = best({ stitches: 60, groups, allowance: [1, 2], rule: { kind: 'margins', stitches: 4 } });
    expect(spaces(choice.figure)).toEqual([5, 29, 6]);
    expect(choice.acrossSeam).toBe(8);
  });
});

describe('placing with a fixed gap', () => {
  it('gives the odd stitch to the right margin first', () => {
    // L50–R51, three groups of 20: total 41, less 2 · 9 leaves 23: 11 and 12.
    const groups: Group[] = [
      [20, 0, 0],
      [20, 0, 0],
      [20, 0, 0],
    ];
    const choices = place({ stitches: 101, groups, judge: 'blocks', rule: { kind: 'gaps', stitches: 9 } });
    expect(choices.slice(0, 2).map(({ blocks }) => spaces(blocks))).toEqual([
      [11, 9, 9, 12],
      [12, 9, 9, 11],
    ]);
    expect(choices[0]).toMatchObject({ imbalance: 1, fromRule: 0, acrossSeam: 23 });
  });
});

describe('placing into the seam', () => {
  it('is not refused, and the gap across the seam says so', () => {
    // A group as wide as the piece: both margins 0, less 2 on either side.
    const choices = place({ stitches: 20, groups: [[20, 0, 0]], allowance: [2, 2] });
    expect(choices).toHaveLength(1);
    expect(choices[0]).toMatchObject({ acrossSeam: -4, figure: { margins: [0, 0] } });
  });
});

describe('the choices offered', () => {
  const groups: Group[] = [
    [8, 1, 0],
    [5, 0, 2],
    [8, 0, 1],
  ];

  it('are eight at most, or all there are', () => {
    expect(place({ stitches: 60, groups })).toHaveLength(8);
    // 22 − 21 leaves one needle for four spaces.
    expect(place({ stitches: 22, groups })).toHaveLength(4);
    expect(place({ stitches: 21, groups })).toHaveLength(1);
  });

  it('are none without groups', () => {
    expect(place({ stitches: 22, groups: [] })).toEqual([]);
  });

  it('carry their rank and what the rule would ask of split needles', () => {
    // Figures 7, 3 and 7: total 60 − 17 = 43, so gaps of 43/3 and margins of half that.
    const choices = place({ stitches: 60, groups });
    expect(choices.map(({ reason }) => reason.rank)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(choices[0]?.reason.ideal?.gap).toBeCloseTo(43 / 3, 12);
    expect(choices[0]?.reason.ideal?.margin).toBeCloseTo(43 / 6, 12);
  });
});

describe('a rule that starts from where groups stand', () => {
  it('asks for the margins that are there, clear of the seam', () => {
    const standing = { margins: [13, 13], gaps: [24] } as const;
    const clear = clearOf(standing, { left: 1, right: 1 });
    expect(clear).toEqual({ margins: [12, 12], gaps: [24] });
    expect(startRule('margins', clear)).toEqual({ kind: 'margins', stitches: 12 });
    // A figure that lies in the seam has no such margin.
    expect(startRule('margins', clearOf(standing, { left: 14, right: 13 }))).toEqual({ kind: 'margins', stitches: 0 });
  });
});
