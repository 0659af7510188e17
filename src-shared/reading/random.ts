/**
 * Numbers that look random and are the same every time, so that reading a
 * photo twice gives the same cells. Returns a function that gives the next
 * number, 0 ≤ n < 1 (mulberry32: a 32-bit counter, mixed; public domain,
 * from memory).
 */
export function repeatableRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
