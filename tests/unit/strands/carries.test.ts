import { describe, expect, it } from 'vitest';
import { carriesOf } from '@shared/strands/index.ts';
import { drawnFabric, sayCarry } from './drawn-fabric.ts';

function carries(...given: Parameters<typeof drawnFabric>): string[][] {
  const { laid, laying } = drawnFabric(...given);
  return Array.from(carriesOf(laid, laying).carries, (row) => (row ?? []).map(sayCarry));
}

// Columns 0 … 9 are L5 L4 L3 L2 L1 R1 R2 R3 R4 R5. Odd rows come from the right.
const ROWS = [
  '.......XX.', // row 5, from the right: enters at R4
  '..........', // row 4
  '.......XX.', // row 3, from the right: enters at R4, ends at R3
  '...XX.....', // row 2, from the left: enters at L2, ends at L1
  '..XXX.....', // row 1, from the right: ends at L3
];

describe('carries', () => {
  it('go from the needle knitted last to the one knitted first on the next row that uses the strand', () => {
    expect(carries(ROWS)).toEqual([
      ['contrast 1 to row 2: L3-L2, 1 st, 1 up'],
      ['contrast 1 to row 3: L1-R4, 4 st, 1 up'],
      ['contrast 1 to row 5: R3-R4, 1 st, 2 up'],
      [],
      [],
    ]);
  });

  it('turn round when the carriage starts from the other side', () => {
    // Row 1 ends at L1, row 2 enters at L1 and ends at L2, row 3 enters at R3 and ends at R4, row 5 enters at R3.
    expect(carries(ROWS, { startSide: 'left' })).toEqual([
      ['contrast 1 to row 2: L1, 0 st, 1 up'],
      ['contrast 1 to row 3: L2-R3, 4 st, 1 up'],
      ['contrast 1 to row 5: R3-R4, 1 st, 2 up'],
      [],
      [],
    ]);
  });

  it('are over when they go sideways by more than the limit', () => {
    const over = carries(ROWS, { floatLimit: { stitches: 3, mm: null } }).flat();
    expect(over.filter((carry) => carry.endsWith('over'))).toEqual(['contrast 1 to row 3: L1-R4, 4 st, 1 up, over']);
  });

  it('cross the figure after an odd number of rows without the strand', () => {
    // Row 1 ends at L4; row 3 comes from the right too and enters at R4.
    expect(carries(['.XXXXXXXX.', '..........', '.XXXXXXXX.'])[0]).toEqual([
      'contrast 1 to row 3: L4-R4, 7 st, 2 up, over',
    ]);
    // After two rows without it the carriage picks it up where it was left.
    expect(carries(['.XXXXXXXX.', '..........', '..........', '.XXXXXXXX.'])[0]).toEqual([
      'contrast 1 to row 4: L4, 0 st, 3 up',
    ]);
  });

  it('lie at the edges of the piece where the edge needles knit the contrast', () => {
    const bound = ROWS.map((row) => (row.includes('X') ? `X${row.slice(1, -1)}X` : row));
    expect(carries(bound)).toEqual([
      ['contrast 1 to row 2: L5, 0 st, 1 up'],
      ['contrast 1 to row 3: R5, 0 st, 1 up'],
      ['contrast 1 to row 5: L5-R5, 9 st, 2 up, over'],
      [],
      [],
    ]);
  });

  it('are over one stitch beyond the limit, and not at it', () => {
    // The carry of 4 stitches from row 2 to row 3, limit by limit; in mm a stitch is 5.
    const isOver = (floatLimit: { stitches: number; mm: number | null }): boolean =>
      carries(ROWS, { floatLimit })[1]?.[0]?.endsWith('over') ?? false;
    expect([3, 4, 5].map((stitches) => isOver({ stitches, mm: null }))).toEqual([true, false, false]);
    expect([19, 20, 21].map((mm) => isOver({ stitches: 99, mm }))).toEqual([true, false, false]);
  });

  it('take main past the rows all in contrast, on which it waits', () => {
    // Row 1 ends at L5. After two rows without it main goes on at that edge, after one it has to come from the other.
    expect(carries(['.....XX...', 'XXXXXXXXXX', 'XXXXXXXXXX', '..........'])[0]).toEqual([
      'main to row 4: L5, 0 st, 3 up',
    ]);
    expect(carries(['..........', 'XXXXXXXXXX', '..........'])[0]).toEqual(['main to row 3: L5-R5, 9 st, 2 up, over']);
    // Before it has knitted at all, and after it has for the last time, it goes nowhere.
    expect(carries(['XXXXXXXXXX', '..........', 'XXXXXXXXXX']).flat()).toEqual([
      'contrast 1 to row 3: L5-R5, 9 st, 2 up, over',
    ]);
  });

  it('are counted for each contrast by itself, and not for main where it knits in every row', () => {
    // X: row 1 ends at L4, row 2 enters at L3. O: row 1 only.
    expect(carries(['..X.......', '.X....O...'])).toEqual([['contrast 1 to row 2: L4-L3, 1 st, 1 up'], []]);
  });

  // common practice, no source: at most 8 rows or 25 mm straight up, whichever is less.
  it.each([
    { inTenCm: 40, up: 8, isCut: false, why: '8 rows of 2.5 mm are 20 mm' },
    { inTenCm: 40, up: 9, isCut: true, why: '9 rows are more than 8' },
    { inTenCm: 28, up: 7, isCut: false, why: '7 rows of 100 / 28 mm are 25 mm' },
    { inTenCm: 28, up: 8, isCut: true, why: '8 rows of 100 / 28 mm are more than 25 mm' },
    { inTenCm: 20, up: 5, isCut: false, why: '5 rows of 5 mm are 25 mm' },
    { inTenCm: 20, up: 6, isCut: true, why: '6 rows of 5 mm are 30 mm' },
  ])('of $up rows up at $inTenCm in 10 cm are cut: $isCut, since $why', ({ inTenCm, up, isCut }) => {
    const lines = ['.XX.......', ...Array<string>(up - 1).fill('..........'), '.XX.......'];
    const { laid, laying } = drawnFabric(lines, { gauge: { stitches: 20, rows: inTenCm } });
    const { carries: carried, cuts } = carriesOf(laid, laying);
    expect(carried[0]?.map(({ toRow, rows }) => [toRow, rows]) ?? []).toEqual(isCut ? [] : [[up + 1, up]]);
    expect(cuts[0]?.map(({ toRow, rows }) => [toRow, rows]) ?? []).toEqual(isCut ? [[up + 1, up]] : []);
    expect(cuts[0]?.[0]?.mm ?? (up * 100) / inTenCm).toBeCloseTo((up * 100) / inTenCm, 9);
  });
});
