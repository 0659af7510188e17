import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { drawnFabric, run, sayFloat } from './drawn-fabric.ts';

const slots = (first: number, last: number) => ({ first: first as Slot, last: last as Slot });

describe('floats of one row', () => {
  // Columns 0 … 9 are L5 L4 L3 L2 L1 R1 R2 R3 R4 R5.
  it.each([
    {
      // Main misses columns 2–3 and 6; the contrast, spanning 2 … 6, misses 4–5.
      row: '..XX..X...',
      floats: ['main L3-L2', 'contrast 1 L1-R1', 'main R2'],
      why: 'the contrast floats between its stitches, main behind them',
    },
    {
      row: '..XXXX....',
      floats: ['main L3-R1'],
      why: 'one run of contrast floats nowhere itself',
    },
    {
      // X spans 1 … 6 and misses 2–5; O spans 3 … 4; main misses 1, 3–4 and 6.
      row: '.X.OO.X...',
      floats: ['main L4', 'main L2-L1', 'contrast 1 L3-R1', 'main R2'],
      why: 'a second contrast lies within the float of the first',
    },
    {
      // Main misses 2 … 5 in one float, whichever contrast knits there.
      row: '..XXOO....',
      floats: ['main L3-R1'],
      why: 'main floats past two contrasts at once',
    },
    { row: '..........', floats: [], why: 'a plain row has none' },
    { row: 'XXXXXXXXXX', floats: [], why: 'main waits where it knits nothing' },
    { row: 'XXXXXOOOOO', floats: [], why: 'two contrasts side by side, and main waits' },
    { row: '.XXXXXXXXX', floats: ['main L4-R5 over'], why: 'main runs to both edges for one stitch of it' },
    {
      row: 'X........X',
      floats: ['main L5', 'contrast 1 L4-R4 over', 'main R5'],
      why: 'eight stitches are over a limit of five',
    },
    {
      row: '.X.....X..',
      floats: ['main L4', 'contrast 1 L3-R2', 'main R3'],
      why: 'five stitches are within a limit of five',
    },
    {
      // The contrast from edge to edge, as with end-needle selection; main behind every stitch of it.
      row: 'X.XX..X..X',
      floats: ['main L5', 'contrast 1 L4', 'main L3-L2', 'contrast 1 L1-R1', 'main R2', 'contrast 1 R3-R4', 'main R5'],
      why: 'the contrast that both edge needles knit floats from edge to edge',
    },
    {
      row: '  .XX.X.  ',
      floats: ['main L2-L1', 'contrast 1 R1', 'main R2'],
      why: 'nothing floats beside the piece',
    },
  ])('$row: $why', ({ row, floats }) => {
    const { laid } = drawnFabric([row]);
    // Ordered by last needle; where two floats end at one needle their order says nothing.
    expect([...(laid.rows[0]?.floats ?? [])].map(sayFloat).sort()).toEqual([...floats].sort());
  });

  it('knows the length of a float in stitches and mm', () => {
    const { laid } = drawnFabric(['X.......X.'], { gauge: { stitches: 28, rows: 40 } });
    // 7 stitches of 100 / 28 mm are 25 mm.
    const float = laid.rows[0]?.floats.find(({ strand }) => strand.role === 'contrast');
    expect(float).toMatchObject({ stitches: 7 });
    expect(float?.mm).toBeCloseTo(25, 9);
  });
});

describe('a ball for each group', () => {
  const ownBalls = [
    { group: 0, ...slots(-5, -3), firstRow: 1, lastRow: 1 },
    { group: 1, ...slots(-2, 2), firstRow: 1, lastRow: 2 },
  ];

  it('leaves no float between the groups', () => {
    // Group 0 on L5–L3, group 1 on L2–R3. Without own balls the contrast would float over L4–L3 too.
    const { laid } = drawnFabric(['X..X.X....'], { ownBalls });
    expect(laid.rows[0]?.floats.map(sayFloat)).toEqual(['main L5', 'main L2', 'contrast 1 of group 1 L1', 'main R1']);
  });

  it('changes the ball inside a run that goes on from group to group', () => {
    const { laid } = drawnFabric(['.XXXX.....'], { ownBalls });
    expect(laid.rows[0]?.contrast.map(({ first, last }) => run(first, last))).toEqual(['L4-L1']);
    expect(
      laid.rows[0]?.strands.map(({ first, last, strand }) => [laid.strands[strand]?.group, run(first, last)]),
    ).toEqual([
      [0, 'L4-L3'],
      [1, 'L2-L1'],
    ]);
  });

  it('ends with the group’s rows', () => {
    const { laid } = drawnFabric(['X..X......', '..........'], { ownBalls });
    // On row 2 only group 1 has a ball of its own; L5 is knitted from the shared one.
    expect(laid.rows[1]?.strands.map(({ strand }) => laid.strands[strand]?.group)).toEqual([null, 1]);
  });
});

describe('the totals of a strand', () => {
  it('are its stitches, the stitches it floats over and the rows it knits in', () => {
    const { laid } = drawnFabric(['..........', '.X.X......', '..XX..X...', '..........']);
    // Row 2: 3 contrast stitches and a float of 2; row 3: 2 and 1.
    expect(laid.strands.map(({ role }) => role)).toEqual(['main', 'contrast']);
    expect(laid.totals).toMatchObject([{ stitches: [10 + 7 + 8 + 10, 5], floated: [5, 3] }]);
    expect([laid.firstRow[1], laid.lastRow[1]]).toEqual([2, 3]);
  });
});
