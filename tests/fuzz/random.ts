/** Choices that look random and can be made again: everything follows from the seed. */
import { repeatableRandom } from '@shared/reading/k-means.ts';

export interface Dice {
  /** A whole number, 0 ≤ n < `below`. */
  below(below: number): number;
  /** True once in `of` times. */
  once(of: number): boolean;
  pick<T>(from: readonly T[]): T;
}

export function diceOf(seed: number): Dice {
  const next = repeatableRandom(seed);
  const below = (most: number): number => Math.floor(next() * most);
  return { below, once: (of) => below(of) === 0, pick: (from) => from[below(from.length)] as never };
}
