/** Why a picture shows no chart: before it is said that there is none, whether one could be seen in it. */
import { luma } from './luma.ts';
import type { Picture } from './picture.ts';
import { LEAST_PAPER } from './quality.ts';

/** Pixels looked at, evenly spread, or about so many. */
const MOST_PLACES = 60_000;

/** The lightest and the darkest lie beyond this share. */
const ENDS = 0.02;

/** What differs less than this from its surroundings, 0 … 255, has no edge that tells how sharp it is. */
const LEAST_EDGE = 25;

/** How far from an edge its two sides are looked for, in pixels; an edge smeared more is told as smeared so much. */
const BESIDE = 8;

/** The steepest of these edges say how sharp the picture is: this share of them. */
const STEEPEST = 0.1;

/** Fewer edges say nothing. */
const LEAST_EDGES = 50;

/** Edges smeared by a Gaussian of this deviation, in pixels, hide the lines of cells ten pixels wide. */
const MOST_SMEARED = 1.9;

/** The greatest slope of an edge smeared by a Gaussian of deviation 1. */
const SLOPE_OF_EDGE = 1 / Math.sqrt(2 * Math.PI);

/** What hides a chart in `picture`, if anything does; else there is none. */
export function whyNoChart(picture: Picture): 'too-dark' | 'blurred' | 'no-cells' {
  const { width, height, rgba } = picture;
  const step = Math.max(1, Math.floor(Math.sqrt((width * height) / MOST_PLACES)));
  const lightness = (x: number, y: number): number => luma(rgba, (y * width + x) * 4);
  const seen: number[] = [];
  const smeared: number[] = [];
  for (let y = BESIDE + 1; y < height - BESIDE - 1; y += step) {
    for (let x = BESIDE + 1; x < width - BESIDE - 1; x += step) {
      seen.push(lightness(x, y));
      const across = [-BESIDE, -1, 1, BESIDE].map((off) => lightness(x + off, y));
      const down = [-BESIDE, -1, 1, BESIDE].map((off) => lightness(x, y + off));
      for (const [before, here, there, after] of [across, down] as [number, number, number, number][]) {
        const slope = Math.abs(there - here) / 2;
        const range = Math.abs(after - before);
        if (range >= LEAST_EDGE && slope > 0) smeared.push((SLOPE_OF_EDGE * range) / slope);
      }
    }
  }
  seen.sort((one, other) => one - other);
  if ((seen[Math.floor((1 - ENDS) * seen.length)] ?? 255) < LEAST_PAPER) return 'too-dark';
  smeared.sort((one, other) => one - other);
  const sharpest = smeared[Math.floor(STEEPEST * smeared.length)] ?? 0;
  return smeared.length >= LEAST_EDGES && sharpest > MOST_SMEARED ? 'blurred' : 'no-cells';
}
