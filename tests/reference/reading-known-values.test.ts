/** What reading computes, against published and hand-computed values and against definitions. */
import { describe, expect, it } from 'vitest';
import { converter, differenceEuclidean } from 'culori';
import {
  colourTextOf,
  homography,
  labDifference,
  oklab,
  otsu,
  project,
  rectangle,
  type Corners,
  type Homography,
} from '@shared/reading/index.ts';
import { seeded } from '../unit/reading/chart-photo.ts';

describe('a homography from four pairs of points', () => {
  // Computed exactly, by hand in fractions; OpenCV and ml-matrix agree.
  const exact: { from: Corners; to: Corners; h: Homography; centre: [number, number]; goesTo: [number, number] }[] = [
    {
      from: rectangle(1, 1),
      to: corners(0, 0, 4, 0, 3, 2, 1, 2),
      h: [4, 2, 0, 0, 4, 0, 0, 1, 1],
      centre: [0.5, 0.5],
      goesTo: [2, 4 / 3],
    },
    {
      from: rectangle(24, 24),
      to: corners(100, 80, 500, 120, 460, 520, 60, 440),
      h: [4475 / 306, -115 / 68, 100, 20 / 17, 4535 / 306, 80, -5 / 1224, -1 / 2448, 1],
      centre: [12, 12],
      goesTo: [52060 / 193, 55480 / 193],
    },
  ];
  it.each(exact)('has the entries computed exactly', ({ from, to, h, centre, goesTo }) => {
    const found = homography(from, to);
    h.forEach((entry, i) => expect(found[i]).toBeCloseTo(entry, 10));
    const { x, y } = project(found, { x: centre[0], y: centre[1] });
    expect(x).toBeCloseTo(goesTo[0], 9);
    expect(y).toBeCloseTo(goesTo[1], 9);
  });

  it('keeps its digits where the sheet is small and far out', () => {
    const from = corners(90_000, 90_000, 90_030, 90_001, 90_029, 90_041, 89_999, 90_039);
    const to = rectangle(30, 40);
    const h = homography(from, to);
    from.forEach((point, i) => {
      const { x, y } = project(h, point);
      expect(x).toBeCloseTo(to[i]?.x as number, 4);
      expect(y).toBeCloseTo(to[i]?.y as number, 4);
    });
  });
});

function corners(...n: [number, number, number, number, number, number, number, number]): Corners {
  const [a, b, c, d, e, f, g, h] = n;
  return [
    { x: a, y: b },
    { x: c, y: d },
    { x: e, y: f },
    { x: g, y: h },
  ];
}

describe("Otsu's threshold", () => {
  it('cuts the taught example after value 2', () => {
    // A teaching example (histogram 8 7 2 6 9 4), computed: within 0.4909, between 2.6287.
    const counts = [8, 7, 2, 6, 9, 4];
    const { threshold, between } = otsu(counts);
    expect(threshold).toBe(2);
    expect(between).toBeCloseTo(2.6287, 4);
    expect(within(counts, threshold)).toBeCloseTo(0.4909, 4);
  });

  it('is its definition: no other of the 256 cuts has less variance within its classes', () => {
    // Otsu 1979, from memory: least variance within is most variance between.
    const random = seeded(5);
    for (let round = 0; round < 200; round++) {
      const counts = Array.from({ length: 256 }, () => (random() < 0.3 ? Math.floor(random() * 50) : 0));
      counts[Math.floor(random() * 128)] = 200;
      counts[128 + Math.floor(random() * 128)] = 100;
      const least = Math.min(...counts.map((_, cut) => within(counts, cut)));
      expect(within(counts, otsu(counts).threshold)).toBeCloseTo(least, 8);
    }
  });

  it('has one class where all is of one value', () => {
    expect(otsu([0, 0, 9, 0])).toMatchObject({ between: 0, lowerMean: 2, upperMean: 2 });
    expect(otsu([0, 0])).toMatchObject({ between: 0 });
  });
});

/** Variance within the classes up to and above `cut`, straight from the definition; infinite if one is empty. */
function within(counts: readonly number[], cut: number): number {
  const classes = [counts.map((n, v) => (v <= cut ? n : 0)), counts.map((n, v) => (v > cut ? n : 0))];
  const total = counts.reduce((sum, n) => sum + n, 0);
  let variance = 0;
  for (const one of classes) {
    const size = one.reduce((sum, n) => sum + n, 0);
    if (size === 0) return Infinity;
    const mean = one.reduce((sum, n, v) => sum + n * v, 0) / size;
    variance += one.reduce((sum, n, v) => sum + n * (v - mean) ** 2, 0) / total;
  }
  return variance;
}

describe('differences between colours', () => {
  // Sharma, Wu, Dalal 2005, published test data for CIEDE2000.
  it.each([
    [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
    [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
    [[50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
    [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0],
    [[50, 2.5, 0], [73, 25, -18], 27.1492],
    [[50, 2.5, 0], [61, -5, 29], 22.8977],
    [[50, 2.49, -0.001], [50, -2.49, 0.001], 7.1792],
    [[50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
    [[2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
  ] as const)('%j and %j differ by %d', (one, other, difference) => {
    const lab = ([l, a, b]: readonly [number, number, number]) => ({ l, a, b });
    expect(labDifference(lab(one), lab(other))).toBeCloseTo(difference, 4);
    expect(labDifference(lab(other), lab(one))).toBeCloseTo(difference, 4);
  });

  it('in OKLab are those of culori, colour by colour', () => {
    const reference = converter('oklab');
    const distance = differenceEuclidean('oklab');
    for (let r = 0; r < 256; r += 15) {
      for (let g = 0; g < 256; g += 15) {
        for (let b = 0; b < 256; b += 15) {
          const [l, a, yellow] = oklab(r, g, b);
          const theirs = reference({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
          expect(distance(theirs, { mode: 'oklab', l, a, b: yellow })).toBeLessThan(1e-6);
          // And back to the sRGB value that it came from.
          expect(colourTextOf([l, a, yellow])).toBe(
            `#${[r, g, b].map((value) => value.toString(16).padStart(2, '0')).join('')}`,
          );
        }
      }
    }
  });
});
