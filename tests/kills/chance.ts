/** Numbers that look like chance, and are the same for the same seed. */

/** From 0 to below 1. */
export type Chance = () => number;

/** Mulberry32, a generator of 32 bits in the public domain (Tommy Ettinger, 2017; from memory). */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
