/**
 * Charts photographed by a camera that was written for these tests: painted
 * from their cells, seen from twenty places, out of focus, grainy, unevenly
 * lit and packed as JPEG. What comes back is held against what was painted.
 */
import { describe, expect, it } from 'vitest';
import { finish, photoOf, proposeGrid, readCells } from '@shared/reading/index.ts';
import { nudged, photograph, seeded, type Camera, type Wear } from '../unit/reading/chart-photo.ts';
import { charts, compare } from '../unit/reading/charts.ts';
import { blobs, speckled } from '../unit/reading/motifs.ts';

/** Twenty ways to hold a camera: turned up to 12 degrees, tipped and swung up to 25, lenses that bulge or not. */
const random = seeded(61);
const between = (least: number, most: number): number => least + (most - least) * random();
const cameras: readonly Camera[] = Array.from({ length: 20 }, (_, i) => ({
  width: 760,
  height: 640,
  roll: i === 0 ? 12 : i === 1 ? -12 : between(-12, 12),
  tilt: between(-25, 25),
  pan: between(-25, 25),
  barrel: i % 4 === 0 ? 0.012 : 0,
}));

/** A lamp to one side; a dim corner; the soft shadow of a hand. */
const lamps: readonly ((x: number, y: number) => number)[] = [
  (x, y) => 0.65 + 0.35 * x - 0.1 * y,
  (x, y) => 1 - 0.4 * ((x - 0.6) ** 2 + (y - 0.4) ** 2),
  (x, y) => 0.7 + 0.3 / (1 + Math.exp(-(x - 0.5 + 0.3 * y) * 14)),
];

const sizes: readonly (readonly [number, number])[] = [
  [24, 30],
  [40, 32],
  [36, 48],
  [60, 48],
];

const cases = cameras.map((camera, i) => {
  const chart = charts[i % charts.length] as (typeof charts)[number];
  const [columns, rows] = sizes[(i + Math.floor(i / 4)) % sizes.length] as readonly [number, number];
  return { name: chart.name, columns, rows, chart, camera, seed: i + 1 };
});

describe('a chart photographed in the hand', () => {
  it.each(cases)('$name, $columns × $rows, camera $seed', ({ chart, columns, rows, camera, seed }) => {
    const yarns = chart.style.colours.length;
    const grid = seed % 5 === 0 && yarns === 2 ? speckled(columns, rows, 0.3, seed) : blobs(columns, rows, yarns, seed);
    const wear: Wear = { blur: 0.9, noise: 5, light: lamps[seed % lamps.length] as Wear['light'], quality: 60, seed };
    const { picture, corners } = photograph(grid, chart.style, camera, wear);
    const photo = photoOf(picture);
    const set = nudged(corners, 1.2, seeded(seed));

    const proposal = finish(proposeGrid(photo, set));
    expect([proposal.columns?.count, proposal.rows?.count]).toEqual([columns, rows]);

    const reading = finish(readCells(photo, set, columns, rows, chart.levels));
    const { wrong, wrongButSure, doubtful } = compare(reading, grid);
    expect(reading.colours).toHaveLength(yarns);
    expect(wrong).toBeLessThanOrEqual(0.005 * grid.cells.length);
    expect(wrongButSure).toBe(0);
    expect(doubtful).toBeLessThanOrEqual(0.05 * grid.cells.length);
  });

  it('with a stroke of the pen across it: cells that come back wrong are among the doubtful', () => {
    const chart = charts[0] as (typeof charts)[number];
    const grid = blobs(40, 32, 2, 3);
    const { picture, corners } = photograph(grid, chart.style, cameras[3] as Camera, {
      blur: 2,
      noise: 12,
      quality: 60,
    });
    const rgba = Uint8ClampedArray.from(picture.rgba);
    for (let x = 150; x < 600; x++) {
      for (let y = 300; y < 303; y++) rgba.set([70, 60, 70, 255], (y * picture.width + x) * 4);
    }
    const reading = finish(readCells(photoOf({ ...picture, rgba }), corners, 40, 32, chart.levels));
    const { wrongButSure, doubtful } = compare(reading, grid);
    expect(wrongButSure).toBe(0);
    expect(doubtful).toBeGreaterThan(0);
  });
});
