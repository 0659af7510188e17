/**
 * Whether there are cells in a photo in which none were found, too faint to be
 * followed: lines or pencil that hardly differ from paper. One window over
 * them shows no more than chance does; many that agree show that they are there.
 */
import { hypothesesOf, isLookedOver, type PlacedSeed } from './follow-lattice.ts';
import { seedsOf, WINDOW, type Seed } from './lattice-seed.ts';
import { luma } from './luma.ts';
import type { Photo } from './photo.ts';
import type { Picture } from './picture.ts';

/** So many windows agree on the steps, and say this much together: of a blank sheet, fur or grain they say a third. */
const LEAST_WINDOWS = 5;
const LEAST_TOGETHER = 12;

/** Darker than this share of paper is ink; more of it than this share of a window is writing, or a chart that is not faint. */
const INK_BELOW = 0.6;
const MOST_INK = 0.05;

/** Paper is as light as the lightest but this share. */
const LIGHTEST = 0.1;

/** `photo`: one in which no lattice was found that could be followed. */
export function areCellsFaint({ levels }: Photo): boolean {
  const seeds = levels.flatMap((picture, level): PlacedSeed[] =>
    isLookedOver(picture) ? seedsOf(picture, true).map((seed) => ({ seed, level })) : [],
  );
  const [best] = hypothesesOf(seeds);
  if (best === undefined || best.length < LEAST_WINDOWS) return false;
  if (best.reduce((sum, { seed }) => sum + seed.score, 0) < LEAST_TOGETHER) return false;
  const inks = best.map(({ seed, level }) => inkAround(levels[level] as Picture, seed)).sort((a, b) => a - b);
  return (inks[inks.length >> 1] as number) <= MOST_INK;
}

/** The share of ink in the middle of a seed's window. */
function inkAround({ width, height, rgba }: Picture, { at }: Seed): number {
  const [left, top] = [at.x, at.y].map((middle) => Math.max(0, Math.round(middle - WINDOW / 4))) as [number, number];
  const lights: number[] = [];
  for (let y = top; y < Math.min(height, top + WINDOW / 2); y++) {
    for (let x = left; x < Math.min(width, left + WINDOW / 2); x++) lights.push(luma(rgba, (y * width + x) * 4));
  }
  lights.sort((a, b) => a - b);
  const paper = lights[Math.floor((1 - LIGHTEST) * lights.length)] ?? 0;
  return lights.filter((light) => light < INK_BELOW * paper).length / Math.max(1, lights.length);
}
