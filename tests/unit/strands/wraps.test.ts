import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { wrapsOf } from '@shared/strands/index.ts';
import { wrapStrandsOf } from '@shared/yarn/index.ts';
import { drawnFabric, sayWrap } from './drawn-fabric.ts';

/** No all-over pattern unless said otherwise. */
const RULES = { main: 0, isAllOver: () => false, seamAllowance: { left: 0, right: 0 } };

function wraps(...given: Parameters<typeof drawnFabric>): string[][] {
  const { fabric, laid } = drawnFabric(...given);
  return wrapsOf(fabric, laid, RULES).map((row) => (row ?? []).map(sayWrap));
}

// common practice, no source: on the carriage side only, the first unselected needle next to the outermost selected one.
describe('wraps before a row', () => {
  // Columns 0 … 9 are L5 L4 L3 L2 L1 R1 R2 R3 R4 R5.
  it.each([
    {
      row: '..XXX.....',
      startSide: 'right',
      expected: ['contrast 1 right R1'],
      why: 'beside the figure, on the right',
    },
    { row: '..XXX.....', startSide: 'left', expected: ['contrast 1 left L4'], why: 'beside the figure, on the left' },
    { row: '..X..X....', startSide: 'right', expected: ['contrast 1 right R2'], why: 'one ball has two edges only' },
    { row: 'XXX.......', startSide: 'left', expected: [], why: 'nothing beyond the last needle of the piece' },
    { row: '  XXX.....', startSide: 'left', expected: [], why: 'nothing beside the piece where it is narrower' },
    {
      row: '..XXO.....',
      startSide: 'right',
      expected: ['contrast 2 right R1'],
      why: 'nothing on a needle that knits contrast',
    },
    {
      row: '..X.O.....',
      startSide: 'right',
      expected: ['contrast 1 right L2', 'contrast 2 right R1'],
      why: 'each contrast has its edge',
    },
    { row: '..........', startSide: 'right', expected: [], why: 'none on a plain row' },
  ] as const)('$row from the $startSide: $why', ({ row, startSide, expected }) => {
    expect(wraps([row], { startSide })).toEqual([expected]);
  });

  it('change sides with the carriage', () => {
    expect(wraps(['...XX.....', '...XX.....', '...XX.....'])).toEqual([
      ['contrast 1 right R1'],
      ['contrast 1 left L3'],
      ['contrast 1 right R1'],
    ]);
  });

  it('are none where the contrast is bound in at both edges, nor beside an all-over pattern', () => {
    expect(wraps(['X.XX..X..X', 'X.XX..X..X'])).toEqual([[], []]);
    // A fill on L5–L1, a group on R2: from the right the group is wrapped, from the left it would be the fill.
    const { fabric, laid } = drawnFabric(['.X....X...', '.X....X...']);
    const found = wrapsOf(fabric, laid, { ...RULES, isAllOver: (_row, needle) => needle < 0 });
    expect(found.map((row) => (row ?? []).map(sayWrap))).toEqual([['contrast 1 right R3'], []]);
  });

  it('are none on a needle that comes to work before the row, nor inside the seam allowance', () => {
    // Row 2, from the left, has L5 and R5 new; the figure stands beside L5.
    expect(wraps(['.XX.......', ' .XX..... '])).toEqual([['contrast 1 right L1'], []]);
    expect(wraps(['.XX.......', '..XX......'])).toEqual([['contrast 1 right L1'], ['contrast 1 left L5']]);
    const { fabric, laid } = drawnFabric(['.XX.......', '......X...']);
    const inSeam = (left: number, right: number) =>
      wrapsOf(fabric, laid, { ...RULES, seamAllowance: { left, right } }).map((row) => (row ?? []).map(sayWrap));
    expect(inSeam(0, 2)).toEqual([['contrast 1 right R3'], ['contrast 1 left L5']]);
    expect(inSeam(1, 3)).toEqual([[], []]);
  });

  it('come at the edge of every group that has its own ball', () => {
    const ownBalls = [
      { group: 0, first: -5 as Slot, last: -3 as Slot, firstRow: 1, lastRow: 1 },
      { group: 1, first: 0 as Slot, last: 2 as Slot, firstRow: 1, lastRow: 1 },
    ];
    expect(wraps(['.X...XX...'], { ownBalls })).toEqual([
      ['contrast 1 of group 0 right L3', 'contrast 1 of group 1 right R3'],
    ]);
  });
});

function strands(...given: Parameters<typeof drawnFabric>) {
  const { fabric, laid, laying } = drawnFabric(...given);
  const found = wrapStrandsOf(laid, wrapsOf(fabric, laid, RULES), { ...laying, loopMmOf: () => 12 });
  return found.map(({ edge, firstRow, lastRow, wraps: count, mm }) => ({ edge, rows: [firstRow, lastRow], count, mm }));
}

// Stitches are 5 mm wide, rows 5 mm tall, a wrap takes 12 mm, and each end has a tail of 150 mm.
describe('strands to cut for wrapping', () => {
  it('are two for a wide figure, one for each edge', () => {
    // Six stitches, more than the limit of five. Right: rows 1 and 3, 2 · 12 + 2 · 5 + 300.
    const four = Array<string>(4).fill('..XXXXXX..');
    expect(strands(four)).toEqual([
      { edge: 'right', rows: [1, 3], count: 2, mm: 334 },
      { edge: 'left', rows: [2, 4], count: 2, mm: 334 },
    ]);
  });

  it('are one folded in two for a narrow figure', () => {
    // Four stitches. Wraps 4 · 12, up each edge 10, between the lowest wraps (R3 on row 1, L3 on row 2) 5 · 5 + 5, tails 300.
    const four = Array<string>(4).fill('...XXXX...');
    expect(strands(four)).toEqual([{ edge: 'both', rows: [1, 4], count: 4, mm: 48 + 10 + 10 + 30 + 300 }]);
  });

  it('begin anew where the edge moves sideways by more than the limit', () => {
    const moved = ['..........', '........X.', '..........', '.X........'];
    // Row 1 from the right wraps L3, row 3 wraps R5: seven needles on, so a new strand.
    expect(strands(moved)).toEqual([
      { edge: 'right', rows: [1, 1], count: 1, mm: 312 },
      { edge: 'right', rows: [3, 3], count: 1, mm: 312 },
    ]);
  });

  it('are carried where the edge moves by no more than the limit', () => {
    // Row 1 wraps L3 (column 2), row 3 wraps R3 (column 7): five needles and two rows on.
    const moved = ['..........', '......X...', '..........', '.X........'];
    expect(strands(moved)).toEqual([{ edge: 'right', rows: [1, 3], count: 2, mm: 24 + 25 + 10 + 300 }]);
  });

  // common practice, no source: carried up at most 8 rows or 25 mm, and a strand longer than 1.5 m tangles.
  it('are not shared by figures further apart than a strand is carried up', () => {
    const apart = (blank: number) => ['..XXXXXX..', ...Array<string>(blank).fill('..........'), '..XXXXXX..'];
    // 5 mm a row: 4 rows up are 20 mm, 6 are 30 mm. Odd rows wrap R4.
    expect(strands(apart(3)).map(({ rows }) => rows)).toEqual([[1, 5]]);
    expect(strands(apart(5)).map(({ rows }) => rows)).toEqual([
      [1, 1],
      [7, 7],
    ]);
  });

  it('go on with the rhythm of the carriage in the coarsest fabric', () => {
    // 6 rows in 10 cm: the carriage is back after two rows of 33 mm.
    const four = Array<string>(4).fill('..XXXXXX..');
    expect(strands(four, { gauge: { stitches: 20, rows: 6 } }).map(({ edge, rows }) => [edge, ...rows])).toEqual([
      ['right', 1, 3],
      ['left', 2, 4],
    ]);
  });

  it('begin anew before they are longer than 1.5 m', () => {
    // Wide: a wrap and the way of two rows are 12 + 10; 300 + 12 + n · 22 = 1500 at n = 54, so 55 wraps a strand.
    const wide = strands(Array<string>(240).fill('..XXXXXX..'));
    expect(wide.map(({ edge, count, mm }) => [edge, count, mm])).toEqual([
      ['right', 55, 1500],
      ['left', 55, 1500],
      ['right', 55, 1500],
      ['left', 55, 1500],
      ['right', 10, 510],
      ['left', 10, 510],
    ]);
    // Folded in two it serves both edges: 300 + 12 + (12 + 30 over the fold) + n · 22 = 1490 at n = 52, so 54 wraps.
    const folded = strands(Array<string>(120).fill('...XXXX...'));
    expect(folded.map(({ edge, rows, count, mm }) => [edge, ...rows, count, mm])).toEqual([
      ['both', 1, 54, 54, 1498],
      ['both', 55, 108, 54, 1498],
      ['both', 109, 120, 12, 574],
    ]);
  });
});
