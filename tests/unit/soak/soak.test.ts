/** What the soak stands on: the same hand for the same seed, and growth told where there is any. */
import { describe, expect, it } from 'vitest';
import { growths } from '../../soak/memory.ts';
import { Random } from '../../soak/random.ts';

describe('a seeded hand', () => {
  const numbers = (seed: number): number[] => {
    const random = new Random(seed);
    return Array.from({ length: 50 }, () => random.whole(1, 6));
  };

  it('does the same for the same seed, and comes to every choice', () => {
    expect(numbers(3)).toEqual(numbers(3));
    expect(numbers(3)).not.toEqual(numbers(4));
    expect(new Set(numbers(3))).toEqual(new Set([1, 2, 3, 4, 5, 6]));
    expect(() => new Random(1).of([])).toThrow(RangeError);
  });
});

describe('growth', () => {
  const kept = (heapMb: number) => ({ heapMb, nodes: 100, listeners: 7 });

  it('is the median of the last quarter against that of the second', () => {
    const measured = [1, 1, 10, 10, 10, 10, 12, 12].map(kept);
    expect(growths(measured).map(({ ratio }) => ratio)).toEqual([1.2, 1, 1]);
    // One measure that falls out of line is no growth.
    const spiked = [1, 1, 1, 10, 10, 10, 10, 10, 10, 10, 99, 10].map(kept);
    expect(growths(spiked)[0]?.ratio).toBe(1);
  });

  it('is not told of a run too short to have quarters', () => {
    expect(() => growths(Array.from({ length: 7 }, () => kept(1)))).toThrow(RangeError);
  });
});
