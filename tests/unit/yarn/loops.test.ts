/** The length of a stitch from the gauge in each state, from the machine, and from swatches. */
import { describe, expect, it } from 'vitest';
import type { LoopSource } from '@shared/piece/index.ts';
import { GAUGE_SHARE, loopsOf, offTheGauge } from '@shared/yarn/index.ts';

const gauge = { stitches: 28, rows: 40 };
const of = (loop: LoopSource, tex: number | null = null) => loopsOf({ gauge, loop }, tex);

describe('the length of a stitch', () => {
  // l = √(ks / S), S = 11.2 in a cm²: √(19.0 / 11.2) = 1.3025 cm, √(21.6 / 11.2) = 1.3887, √(23.1 / 11.2) = 1.4362 (Munden; computed).
  it.each([
    ['dry-relaxed', 13.025],
    ['wet-relaxed', 13.887],
    ['fully-relaxed', 14.362],
  ] as const)('from the gauge, %s', (state, mm) => {
    expect(of({ from: 'gauge', state }).mmOf(gauge)).toBeCloseTo(mm, 2);
  });

  it('from the gauge may be off by as much as the states differ', () => {
    // √(23.1 / 19.0) − 1, a tenth (computed)
    expect(GAUGE_SHARE).toBeCloseTo(0.1026, 4);
    expect(of({ from: 'gauge', state: 'wet-relaxed' }).share).toBe(GAUGE_SHARE);
  });

  it('of a gauge on the machine is by what the knitter measured, and by nothing where it stays as it is', () => {
    const same = of({ from: 'machine', width: 1, length: 1 }).mmOf(gauge);
    expect(same).toBe(of({ from: 'gauge', state: 'dry-relaxed' }).mmOf(gauge));
    // Nine tenths as wide and as long, the fabric has 28 / 0.9 stitches and 40 / 0.9 rows in 10 cm.
    const rested = { stitches: 28 / 0.9, rows: 40 / 0.9 };
    const shrunk = of({ from: 'machine', width: 0.9, length: 0.9 }).mmOf(gauge);
    expect(shrunk).toBeCloseTo(of({ from: 'gauge', state: 'dry-relaxed' }).mmOf(rested), 10);
  });

  it('unravelled is what was measured, and goes with the gauge elsewhere', () => {
    // A fiftieth from the swatch to the piece, and 5 mm that a ruler misreads (own allowances, no source).
    const loops = of({ from: 'unravelled', stitches: 100, mm: 1290 });
    expect(loops.mmOf(gauge)).toBeCloseTo(12.9, 10);
    // Four times as dense, half as long: by dimensions a length goes as one over the root of stitches in an area.
    expect(loops.mmOf({ stitches: 56, rows: 80 })).toBeCloseTo(6.45, 10);
    expect(loops.share).toBeCloseTo(0.02 + 5 / 1290, 10);
    expect(offTheGauge({ gauge }, loops)).toBeCloseTo(12.9 / 13.0247 - 1, 4);
  });

  // Hobby article on yarn by swatch, computed again: 100 × 100 stitches weigh 70 g.
  it.each([50, 278, 1000])('weighed gives the swatch its own grams again, whatever the count: %i tex', (tex) => {
    const loops = of({ from: 'weighed', stitches: 100, rows: 100, grams: 70 }, tex);
    expect((100 * 100 * loops.mmOf(gauge) * tex) / 1e6).toBeCloseTo(70, 10);
    expect(loops.share).toBeCloseTo(0.02 + 0.5 / 70, 10);
    expect(loops.share).toBeLessThan(GAUGE_SHARE);
  });

  it('weighed without a count is that of the gauge, and says so', () => {
    const loops = of({ from: 'weighed', stitches: 100, rows: 100, grams: 70 });
    expect(loops).toMatchObject({ from: 'unweighed', share: GAUGE_SHARE });
    expect(loops.mmOf(gauge)).toBe(of({ from: 'gauge', state: 'dry-relaxed' }).mmOf(gauge));
  });

  it('is known the surer, the larger the swatch, and never by more than the half', () => {
    const shares = [1, 10, 100, 1000, 10_000].map(
      (stitches) => of({ from: 'unravelled', stitches, mm: 13 * stitches }).share,
    );
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(of({ from: 'unravelled', stitches: 1, mm: 1 }).share).toBe(0.5);
    expect(of({ from: 'weighed', stitches: 10_000, rows: 10_000, grams: 10_000 }, 1).share).toBeGreaterThan(0.02);
  });
});
