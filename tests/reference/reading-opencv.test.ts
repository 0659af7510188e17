/**
 * Straightening and thresholds against OpenCV, a general-purpose library for
 * pictures that had no part in them.
 */
import { createRequire } from 'node:module';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type OpenCv from '@techstark/opencv-js';
import { finish, homography, otsu, photoOf, rectangle, straighten, type Corners } from '@shared/reading/index.ts';
import { seeded } from '../unit/reading/chart-photo.ts';

type Cv = typeof OpenCv;
let cv: Cv;
const held: { delete(): void }[] = [];

/** What OpenCV allocates it does not collect by itself. */
function hold<T extends { delete(): void }>(mat: T): T {
  held.push(mat);
  return mat;
}

beforeAll(async () => {
  // Required, not imported: it has a method called then, and whoever awaits its module waits for ever.
  const loaded = createRequire(import.meta.url)('@techstark/opencv-js') as Cv & { onRuntimeInitialized?: () => void };
  await new Promise<void>((ready) => {
    if (typeof loaded.Mat === 'function') ready();
    else loaded.onRuntimeInitialized = () => ready();
  });
  cv = loaded;
});

afterAll(() => {
  for (const mat of held) mat.delete();
});

const random = seeded(11);
const around = (centre: number, reach: number): number => centre + (2 * random() - 1) * reach;

/** Twenty quadrilaterals in a picture of 300 × 240, each corner somewhere near its own. */
const quads: readonly Corners[] = Array.from({ length: 20 }, () => [
  { x: around(50, 35), y: around(45, 30) },
  { x: around(250, 35), y: around(45, 30) },
  { x: around(250, 35), y: around(195, 30) },
  { x: around(50, 35), y: around(195, 30) },
]);

describe('against OpenCV', () => {
  it.each(quads.map((to, i) => ({ i, to })))('homography $i is that of getPerspectiveTransform', ({ to }) => {
    const from = rectangle(200, 160);
    const flat = (corners: Corners): number[] => corners.flatMap(({ x, y }) => [x, y]);
    const theirs = hold(
      cv.getPerspectiveTransform(
        hold(cv.matFromArray(4, 1, cv.CV_32FC2, flat(from))),
        hold(cv.matFromArray(4, 1, cv.CV_32FC2, flat(to))),
      ),
    );
    const ours = homography(from, to);
    // OpenCV takes its points in single precision: seven digits.
    ours.forEach((entry, i) => {
      const their = theirs.data64F[i] as number;
      expect(Math.abs(entry - their)).toBeLessThanOrEqual(1e-5 * Math.max(1, Math.abs(their)));
    });
  });

  it.each(quads.slice(0, 8).map((corners, i) => ({ i, corners })))(
    'straightening $i is warpPerspective',
    ({ corners }) => {
      // Hills, edges and grain: what bilinear mixing treats differently.
      const [width, height] = [300, 240];
      const rgba = new Uint8ClampedArray(width * height * 4);
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          const at = (y * width + x) * 4;
          rgba.set([128 + 100 * Math.sin(x / 9), (x >> 4) % 2 === (y >> 4) % 2 ? 220 : 40, 255 * random(), 255], at);
        }
      }
      const size = { width: 210, height: 160 };
      const ours = finish(straighten(photoOf({ width, height, rgba }), corners, size));
      // OpenCV's pixels lie at whole numbers, ours half a pixel further.
      const shifted = (points: Corners): number[] => points.flatMap(({ x, y }) => [x - 0.5, y - 0.5]);
      const warp = hold(
        cv.getPerspectiveTransform(
          hold(cv.matFromArray(4, 1, cv.CV_32FC2, shifted(corners))),
          hold(cv.matFromArray(4, 1, cv.CV_32FC2, shifted(rectangle(size.width, size.height)))),
        ),
      );
      const source = hold(cv.matFromArray(height, width, cv.CV_8UC4, [...rgba]));
      const theirs = hold(new cv.Mat());
      cv.warpPerspective(
        source,
        theirs,
        warp,
        new cv.Size(size.width, size.height),
        cv.INTER_LINEAR,
        cv.BORDER_REPLICATE,
      );
      let most = 0;
      let sum = 0;
      for (let i = 0; i < ours.rgba.length; i++) {
        const difference = Math.abs((ours.rgba[i] as number) - (theirs.data[i] as number));
        most = Math.max(most, difference);
        sum += difference;
      }
      // OpenCV places its looks to the 32nd of a pixel: a grain of 255 may be off by 255/32 each way.
      expect(most).toBeLessThanOrEqual(12);
      expect(sum / ours.rgba.length).toBeLessThan(0.6);
    },
  );

  it('thresholds are those of THRESH_OTSU', () => {
    for (let round = 0; round < 40; round++) {
      const [dark, light] = [around(70, 40), around(180, 50)];
      const pixels = Uint8Array.from({ length: 2500 }, () => (random() < 0.35 ? around(dark, 30) : around(light, 25)));
      const counts = new Uint32Array(256);
      for (const value of pixels) counts[value] = (counts[value] as number) + 1;
      const source = hold(cv.matFromArray(50, 50, cv.CV_8UC1, [...pixels]));
      const target = hold(new cv.Mat());
      const theirs = cv.threshold(source, target, 0, 255, cv.THRESH_BINARY + cv.THRESH_OTSU);
      // Equal cuts across an empty stretch divide the pixels alike.
      const below = (cut: number): number => pixels.filter((value) => value <= cut).length;
      expect(below(otsu(counts).threshold)).toBe(below(theirs));
    }
  });
});
