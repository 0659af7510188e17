/** Moments that look like chance, and are the same for the same seed. */
import { repeatableRandom } from '@shared/reading/k-means.ts';

/** From 0 to below 1. */
export type Chance = () => number;

export function chanceOf(seed: number): Chance {
  return repeatableRandom(seed);
}
