/** Floats and colours against figures from outside the program. */
import { wcagContrast } from 'culori';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrastRatio } from '@shared/colour/index.ts';
import { longestWithin } from '@shared/strands/index.ts';

describe('stitches in 25 mm', () => {
  // computed by hand: gauge × 25 / 100, rounded down
  it.each([
    [40, 10],
    [32, 8],
    [28, 7],
    [24, 6],
    [20, 5],
    [16, 4],
    [12, 3],
  ])('at %i stitches in 10 cm are %i', (stitches, longest) => {
    expect(longestWithin({ stitches: 1000, mm: 25 }, { stitches, rows: 40 })).toBe(longest);
  });
});

describe('contrast between two yarns', () => {
  // WCAG 2.2, contrast ratio; figures as published for these greys and primaries, to four places
  it.each([
    ['#000000', 21],
    ['#595959', 7.0047],
    ['#767676', 4.5422],
    ['#777777', 4.4781],
    ['#949494', 3.0335],
    ['#ff0000', 3.9985],
    ['#0000ff', 8.5925],
  ])('of %s on white is %f', (colour, ratio) => {
    expect(contrastRatio(colour, '#ffffff')).toBeCloseTo(ratio, 4);
    expect(contrastRatio('#ffffff', colour)).toBeCloseTo(ratio, 4);
  });

  it('is what culori says, for any two colours', () => {
    const colour = fc.integer({ min: 0, max: 0xffffff }).map((rgb) => `#${rgb.toString(16).padStart(6, '0')}`);
    fc.assert(
      fc.property(colour, colour, (one, other) => {
        expect(contrastRatio(one, other)).toBeCloseTo(wcagContrast(one, other), 6);
      }),
    );
  });

  it('refuses what is no colour', () => {
    expect(() => contrastRatio('white', '#000000')).toThrow(RangeError);
  });
});
