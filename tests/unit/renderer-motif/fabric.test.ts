import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnFrom } from '@shared/bed/index.ts';
import { gridFromText, gridToText } from '@shared/grid/index.ts';
import { turning } from '../../../src-renderer/motif/stage/turned.ts';
import { bendOf } from '../../../src-renderer/canvas/draw-stitches.ts';

const places = fc.double({ min: 0, max: 1, noNaN: true });

describe('the fabric that a chart stands for', () => {
  // common practice, no source: on a single bed the purl side faces the knitter
  it.each([
    { shows: 'worn', face: 'knit', side: 'knit' },
    { shows: 'worn', face: 'purl', side: 'purl' },
    { shows: 'needles', face: 'knit', side: 'purl' },
    { shows: 'needles', face: 'purl', side: 'purl' },
  ] as const)('is seen on its $side side where a chart shows $shows and the $face side is worn', (row) => {
    expect(drawnFrom(row.shows, row.face)).toBe(row.side);
  });

  it('has left and right changed on its other side, and nothing else', () => {
    const grid = gridFromText(['#..', '.##'], '.#');
    const { cell, key, grid: seen } = turning(true, 3);
    expect(gridToText(seen(grid), '.#')).toEqual(['..#', '##.']);
    expect(cell({ column: 0, row: 1 })).toEqual({ column: 2, row: 1 });
    expect(cell(cell({ column: 1, row: 0 }))).toEqual({ column: 1, row: 0 });
    expect(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'Home'].map(key)).toEqual([
      'ArrowRight',
      'ArrowLeft',
      'ArrowUp',
      'Home',
    ]);
  });
});

describe('a stitch', () => {
  it('is a V on the knit side: lowest in its middle, with two straight legs', () => {
    expect(bendOf('knit', 0.5)).toBeLessThan(bendOf('knit', 0.25));
    expect(bendOf('knit', 0.25) * 2).toBeCloseTo(bendOf('knit', 0) + bendOf('knit', 0.5));
  });

  it('is a bump on the purl side: highest in its middle', () => {
    expect(bendOf('purl', 0.5)).toBeGreaterThan(bendOf('purl', 0.25));
    expect(bendOf('purl', 0.25)).toBeGreaterThan(bendOf('purl', 0));
  });

  it.each(['knit', 'purl'] as const)('meets its neighbours and lies on its cell, on the %s side', (side) => {
    expect(bendOf(side, 0)).toBeCloseTo(bendOf(side, 1));
    const steps = Array.from({ length: 1000 }, (_, at) => bendOf(side, (at + 0.5) / 1000));
    expect(steps.reduce((sum, bend) => sum + bend, 0) / 1000).toBeCloseTo(0, 3);
    // The middle of a cell is knitted in the cell's own yarn.
    expect(Math.abs(bendOf(side, 0.5))).toBeLessThan(0.5);
    fc.assert(
      fc.property(places, (across) => {
        expect(bendOf(side, across)).toBeCloseTo(bendOf(side, 1 - across));
      }),
    );
  });
});
