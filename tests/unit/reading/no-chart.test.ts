/** Why no chart is seen in a picture: told by how light its lightest part is and how far its edges are smeared. */
import { describe, expect, it } from 'vitest';
import { blankPicture, type Picture } from '@shared/reading/index.ts';
import { whyNoChart } from '../../../src-shared/reading/no-chart.ts';

const SIDE = 240;

function painted(brightAt: (x: number, y: number) => number): Picture {
  const picture = blankPicture(SIDE, SIDE);
  for (let y = 0; y < SIDE; y++) {
    for (let x = 0; x < SIDE; x++) {
      const at = (y * SIDE + x) * 4;
      picture.rgba.fill(brightAt(x, y), at, at + 3);
      picture.rgba[at + 3] = 255;
    }
  }
  return picture;
}

/** An edge smeared by a Gaussian of this deviation: its integral (Abramowitz and Stegun 7.1.26, off by 1.5e-7 at most). */
function smeared(off: number, deviation: number): number {
  const t = off / deviation / Math.SQRT2;
  const k = 1 / (1 + 0.3275911 * Math.abs(t));
  const tail =
    k *
    (0.254829592 + k * (-0.284496736 + k * (1.421413741 + k * (-1.453152027 + k * 1.061405429)))) *
    Math.exp(-t * t);
  return t > 0 ? 1 - tail / 2 : tail / 2;
}

/** Dark and light stripes 24 pixels wide, from the top to the bottom. */
function stripes(x: number, deviation: number): number {
  const off = ((x + 0.5) % 48) - 24;
  const nearest = Math.abs(off) < 12 ? off : Math.sign(off) * 24 - off;
  return 40 + 190 * smeared(nearest, deviation);
}

describe('a picture without a chart', () => {
  it.each([
    { what: 'in the dark', paper: 29, why: 'too-dark' },
    { what: 'in little light', paper: 31, why: 'no-cells' },
  ])('$what: $why', ({ paper, why }) => {
    expect(whyNoChart(painted(() => paper))).toBe(why);
  });

  it('is dark though a lamp is in it, but not where a strip of it is lit', () => {
    const strip = (width: number) => painted((x) => (x >= 120 && x < 120 + width ? 200 : 10));
    expect(whyNoChart(strip(2))).toBe('too-dark');
    expect(whyNoChart(strip(14))).not.toBe('too-dark');
  });

  it.each([
    { deviation: 0.6, why: 'no-cells' },
    { deviation: 1.6, why: 'no-cells' },
    { deviation: 2.3, why: 'blurred' },
    { deviation: 3, why: 'blurred' },
  ])('is $why where edges are smeared over $deviation pixels', ({ deviation, why }) => {
    expect(whyNoChart(painted((x) => stripes(x, deviation)))).toBe(why);
    expect(whyNoChart(painted((_, y) => stripes(y, deviation)))).toBe(why);
  });

  it('is not blurred where a tenth of its edges are, and the others are sharp', () => {
    expect(whyNoChart(painted((x, y) => stripes(x, y < 0.9 * SIDE ? 0.6 : 3)))).toBe('no-cells');
  });

  it('is not called blurred by what hardly differs from its surroundings', () => {
    expect(whyNoChart(painted((x) => 150 + 0.12 * stripes(x, 3)))).toBe('no-cells');
    expect(whyNoChart(painted((x) => 150 + 0.16 * stripes(x, 3)))).toBe('blurred');
  });
});
