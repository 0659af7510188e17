/** Yarn lengths and counts against published relations and worked figures. */
import { describe, expect, it } from 'vitest';
import {
  densityOf,
  gramsOf,
  loopLengthMm,
  massPerM2,
  MUNDEN,
  stitchesPerCm2,
  texFromBall,
  texFromDenier,
  texFromMetresPerKg,
  texFromNe,
  texFromNm,
  texFromWorsted,
} from '@shared/yarn/index.ts';

describe('Munden’s relations', () => {
  // Munden, J. Text. Inst. 50 (1959) T448; worked by hand with ks = 19.0
  it('give a loop of 13.02 mm for 28 stitches and 40 rows in 10 cm, dry relaxed', () => {
    const gauge = { stitches: 28, rows: 40 };
    expect(stitchesPerCm2(gauge)).toBeCloseTo(11.2, 10);
    expect(loopLengthMm(gauge)).toBeCloseTo(13.02, 2);
    // 12,000 stitches take 156.3 m; 50 g in 180 m is 278 tex, and so 43.45 g (computed)
    const mm = 12_000 * loopLengthMm(gauge);
    expect(mm / 1000).toBeCloseTo(156.3, 1);
    expect(gramsOf(mm, 278)).toBeCloseTo(43.45, 1);
  });

  // GATE Textile Engineering and Fibre Science 2015, question 54
  it('give 92 loops in a cm² for a loop of 0.5 cm, fully relaxed', () => {
    const density = densityOf(5, 'fully-relaxed');
    expect(density.stitches).toBeCloseTo(92.4, 6);
    expect(Math.round(density.stitches)).toBe(92);
    expect(density.courses * density.wales).toBeCloseTo(92.4, 6);
  });

  // computed
  it('give 10 courses, 7.6 wales, 76 loops and 190 g/m² for 5 mm loops of 50 tex, dry relaxed', () => {
    const { courses, wales, stitches } = densityOf(5);
    expect(courses).toBeCloseTo(10, 10);
    expect(wales).toBeCloseTo(7.6, 10);
    expect(stitches).toBeCloseTo(76, 10);
    expect(massPerM2(stitches, 5, 50)).toBeCloseTo(190, 8);
  });

  it.each(['dry-relaxed', 'wet-relaxed', 'fully-relaxed'] as const)('are each other’s inverse, %s', (state) => {
    const { courses, wales } = densityOf(6.5, state);
    const gauge = { stitches: wales * 10, rows: courses * 10 };
    // The published constants are rounded: kc · kw is ks to seven parts in a thousand.
    expect(loopLengthMm(gauge, state) / 6.5).toBeCloseTo(1, 2);
    const { kc, kw, ks } = MUNDEN[state];
    expect(Math.abs((kc * kw) / ks - 1)).toBeLessThan(0.007);
  });
});

describe('yarn counts', () => {
  // ISO 1144 (tex system) and the definitions of the counts, from memory; figures computed
  it.each([
    ['Nm 2/30', texFromNm(30, 2), 66.67],
    ['Ne 30', texFromNe(30), 19.68],
    ['worsted 2/24', texFromWorsted(24, 2), 73.82],
    ['50 g in 175 m', texFromBall(50, 175), 285.71],
    ['50 g in 180 m', texFromBall(50, 180), 277.78],
    ['900 denier', texFromDenier(900), 100],
    ['3500 m in a kg', texFromMetresPerKg(3500), 285.71],
  ])('%s is %f tex', (_, tex, expected) => {
    expect(tex).toBeCloseTo(expected, 2);
  });

  // hobby article on yarn by swatch, computed again: 100 × 100 stitches weigh 70 g
  it('weigh 130,800 stitches at 915.6 g when 10,000 weigh 70', () => {
    const stitches = 2 * 150 * 260 + 2 * 110 * 240;
    expect(stitches).toBe(130_800);
    const loopMm = 13;
    const tex = (70 / (10_000 * loopMm)) * 1e6;
    expect(gramsOf(stitches * loopMm, tex)).toBeCloseTo(915.6, 6);
  });

  it('say nothing of the weight of a yarn whose tex is not known', () => {
    expect(gramsOf(1000, null)).toBeNull();
  });
});
