import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_COLUMNS, MOST_ROWS } from '@shared/grid/index.ts';
import {
  firstTarget,
  forCrop,
  linked,
  withRows,
  withStitches,
  type Target,
} from '../../../src-renderer/reading-in/from-picture/target.ts';

// 28 stitches and 40 rows in 10 cm: a square is 7 stitches to 10 rows.
const gauge = { stitches: 28, rows: 40 };
const square = { width: 500, height: 500 };
const byStitches: Target = { stitches: 70, rows: 100, leads: 'stitches' };

describe('the stitches and rows of a picture', () => {
  it('follow from each other by the gauge: a square picture comes out square', () => {
    expect(withStitches(byStitches, 35, square, gauge)).toEqual({ stitches: 35, rows: 50, leads: 'stitches' });
    expect(withRows(byStitches, 200, square, gauge)).toEqual({ stitches: 140, rows: 200, leads: 'rows' });
  });

  it('stand each for itself once they are unlinked', () => {
    const free = linked(byStitches, false, square, gauge);
    expect(withStitches(free, 35, square, gauge)).toEqual({ stitches: 35, rows: 100, leads: null });
    expect(withRows(free, 7, square, gauge)).toEqual({ stitches: 70, rows: 7, leads: null });
    expect(forCrop(free, { width: 10, height: 500 }, gauge)).toBe(free);
  });

  it('come back into proportion from the stitches when they are linked again', () => {
    const free: Target = { stitches: 35, rows: 9, leads: null };
    expect(linked(free, true, square, gauge)).toEqual({ stitches: 35, rows: 50, leads: 'stitches' });
  });

  it('keep the number that was given when another part of the picture is used', () => {
    const half = { width: 500, height: 250 };
    expect(forCrop(byStitches, half, gauge)).toEqual({ stitches: 70, rows: 50, leads: 'stitches' });
    expect(forCrop({ ...byStitches, leads: 'rows' }, half, gauge)).toEqual({ stitches: 140, rows: 100, leads: 'rows' });
  });

  it('begin at a size that a motif can have, in proportion as far as whole stitches go', () => {
    const side = fc.integer({ min: 1, max: 8000 });
    fc.assert(
      fc.property(side, side, (width, height) => {
        const { stitches, rows } = firstTarget({ width, height }, gauge);
        expect(stitches).toBeGreaterThanOrEqual(1);
        expect(stitches).toBeLessThanOrEqual(MOST_COLUMNS);
        expect(rows).toBeLessThanOrEqual(MOST_ROWS);
        if (rows < 2 || stitches < 2) return;
        // Half a stitch or half a row off at most.
        const [wide, tall] = [stitches / gauge.stitches, rows / gauge.rows];
        const off = Math.abs(wide * height - tall * width);
        expect(off).toBeLessThanOrEqual(Math.max(height / gauge.stitches, width / gauge.rows) / 2 + 1e-6);
      }),
    );
  });
});
