import { describe, expect, it } from 'vitest';
import { label } from '@shared/bed/index.ts';
import type { FloatMending } from '@shared/pattern/index.ts';
import { mendFloats } from '@shared/strands/index.ts';
import { drawnFabric, run, sayFloat } from './drawn-fabric.ts';

/** What is done about the floats of a drawn fabric; the lowest row is row 1. */
function mended(lines: readonly string[], how: FloatMending, settings: { readonly stitches?: number } = {}) {
  const { fabric, laying, laid } = drawnFabric(lines, { floatLimit: { stitches: settings.stitches ?? 5, mm: null } });
  const { rows, lifts, chains } = mendFloats(laid.rows, fabric, { ...laying, mendingOf: () => how });
  return {
    lifts: lifts.flatMap((row, index) =>
      (row ?? []).map(
        ({ needle, float, isHidden }) =>
          `row ${index + 1}: ${run(float.first, float.last)} on ${label(needle)}${isHidden ? ', hidden' : ''}`,
      ),
    ),
    chains: chains.flatMap((row) =>
      (row ?? []).map(({ needle, firstRow, lastRow }) => `rows ${firstRow}-${lastRow} on ${label(needle)}`),
    ),
    over: rows.flatMap(({ floats }) => floats.filter(({ isOver }) => isOver).map(sayFloat)),
  };
}

// Columns 0 … 11 are L6 … L1 R1 … R6; the topmost row comes first.
describe('floats that are hooked up', () => {
  it('are lifted at the needles beside each other, row by row, and no longer too long', () => {
    const row = '..XXXXXXX...';
    expect(mended(['............', row, row, row], 'hooked-up')).toEqual({
      lifts: ['row 1: L4-R3 on L1', 'row 2: L4-R3 on L2', 'row 3: L4-R3 on L1, hidden'],
      chains: [],
      over: [],
    });
  });

  it('are lifted where their own yarn is knitted next', () => {
    // Of L3 … R2, any of which will do, the next row knits R1 and R2 in main.
    expect(mended(['..XXXX......', '..XXXXXXX...'], 'hooked-up').lifts).toEqual(['row 1: L4-R3 on R1, hidden']);
    expect(mended(['.........', '.XXXXXXX.'], 'hooked-up', { stitches: 6 }).lifts).toEqual([
      'row 1: L3-R4 on R1, hidden',
    ]);
  });

  it('stay as they are after the last row, with no row to knit them in', () => {
    expect(mended(['..XXXXXXX...'], 'hooked-up')).toEqual({ lifts: [], chains: [], over: ['main L4-R3 over'] });
  });

  it('are lifted on needles that the next row has', () => {
    // Cast off at the left: the row above begins at R1.
    expect(mended(['      ......', '.XXXXXXX....'], 'hooked-up').lifts).toEqual(['row 1: L5-R2 on R1, hidden']);
  });
});

describe('floats that are latched up', () => {
  it('hang in one chain on the needle whose next stitch is of their yarn', () => {
    const row = '..XXXXXXX...';
    expect(mended(['..XXXX.XX...', row, row, row], 'latched-up')).toEqual({
      lifts: [],
      chains: ['rows 1-3 on R1'],
      over: [],
    });
  });

  it('hang in as many chains as the widest asks for, those that can in one', () => {
    const figure = ['............', '..XXXXXXX...', '.XXXXXXXXX..', 'XXXXXXXXXXX.'];
    expect(mended(figure, 'latched-up', { stitches: 3 }).chains).toEqual([
      'rows 1-2 on L5',
      'rows 1-2 on R4',
      'rows 1-3 on L1',
    ]);
  });

  it('stay as they are where no stitch of their yarn follows above', () => {
    const row = '.XXXX......XXXX.';
    expect(mended(['................', row, row], 'latched-up')).toEqual({
      lifts: [],
      chains: [],
      over: ['contrast 1 L3-R3 over', 'contrast 1 L3-R3 over'],
    });
  });

  it('hold the floats that are short among them', () => {
    const { chains, over } = mended(['.........', '...XXX...', '.XXXXXXX.'], 'latched-up', { stitches: 3 });
    expect({ chains, over }).toEqual({ chains: ['rows 1-2 on R1'], over: [] });
  });
});
