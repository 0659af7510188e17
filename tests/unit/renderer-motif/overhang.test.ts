/** What of a drawing lies over the edge of the chart, by sides. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridFromText, isInside } from '@shared/grid/index.ts';
import { words } from '@shared/words/index.ts';
import { OPEN } from '../../../src-renderer/motif/editing/cutting.ts';
import { overhangOf, overhangTurned } from '../../../src-renderer/motif/editing/overhang.ts';

const chart = { width: 6, height: 4 };
/** Three stitches by two rows, the lower left one ground. */
const corner = gridFromText(['###', '.##'], '.#');
const at = (column: number, row: number) => overhangOf(chart, 0, { cells: corner, at: { column, row } });
const sides = (left: number, right: number, bottom: number, top: number, isWhole = false) => ({
  left,
  right,
  bottom,
  top,
  isWhole,
});

describe('a cutting over the edge', () => {
  it.each([
    ['inside', at(3, 2), null],
    [
      'with only ground outside',
      overhangOf(chart, 0, { cells: gridFromText(['.##'], '.#'), at: { column: -1, row: 0 } }),
      null,
    ],
    ['over the left edge', at(-2, 0), sides(2, 0, 0, 0)],
    ['over the right edge', at(4, 1), sides(0, 1, 0, 0)],
    ['over the bottom', at(1, -1), sides(0, 0, 1, 0)],
    ['over a corner', at(4, 3), sides(0, 1, 0, 1)],
    ['beside the chart', at(6, 0), sides(0, 3, 0, 0, true)],
  ])('%s', (_, found, expected) => {
    expect(found).toEqual(expected);
  });

  it('counts neither cells of the ground nor open ones', () => {
    const cells = { width: 2, height: 1, cells: Uint8Array.of(0, OPEN) };
    expect(overhangOf(chart, 0, { cells, at: { column: -1, row: 9 } })).toBeNull();
    expect(overhangOf(chart, 1, { cells, at: { column: -1, row: 0 } })).toEqual(sides(1, 0, 0, 0, true));
  });

  it('is told exactly where a cell of the figure would be lost', () => {
    const cell = fc.constantFrom(0, 1, OPEN);
    const place = fc.record({ column: fc.integer({ min: -5, max: 8 }), row: fc.integer({ min: -5, max: 8 }) });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 6, maxLength: 6 }), place, (drawn, start) => {
        const cells = { width: 3, height: 2, cells: Uint8Array.from(drawn) };
        const lost = drawn.filter((colour, index) => {
          const column = start.column + (index % 3);
          const row = start.row + Math.floor(index / 3);
          return colour === 1 && !isInside(chart, column, row);
        });
        expect(overhangOf(chart, 0, { cells, at: start }) !== null).toBe(lost.length > 0);
      }),
    );
  });

  it('changes sides where the chart is seen from its other side', () => {
    expect(overhangTurned(sides(2, 0, 1, 0))).toEqual(sides(0, 2, 1, 0));
  });

  it('is said by its sides', () => {
    const { lifted, leftOff } = words.motif.overhang;
    expect(lifted(sides(2, 0, 1, 0))).toBe(
      'Outside the chart: 2 stitches at the left and 1 row at the bottom. Placed here, they are left off.',
    );
    expect(leftOff(sides(0, 1, 0, 0), true)).toBe(
      'Left off outside the chart: 1 stitch at the right. Undo brings them back.',
    );
  });
});
