/** The bench's own measuring, by a clock that the test turns. */
import { describe, expect, it } from 'vitest';
import { isMet } from '../../bench/bar.ts';
import { bestBar } from '../../bench/best.ts';

/** A work that takes `ms`, and in every round but the third `others` more, for what else the machine does. */
function measured(oursMs: number, leastMs: number, others = 0) {
  let now = 0;
  let round = 0;
  const taking = (ms: number) => (): number => {
    now += ms + (round === 2 ? 0 : others);
    return ms;
  };
  const work = taking(oursMs);
  return bestBar(
    {
      name: 'a trial',
      limit: 1.3,
      rounds: 5,
      least: taking(leastMs),
      work: () => {
        const made = work();
        round++;
        return made;
      },
    },
    () => now,
  );
}

describe('a work beside the least that could do it', () => {
  it('meets its bar up to its limit', async () => {
    expect(isMet(await measured(130, 100))).toBe(true);
  });

  it('misses it when it is slowed', async () => {
    expect(isMet(await measured(131, 100))).toBe(false);
    expect(isMet(await measured(260, 100))).toBe(false);
  });

  it('counts neither for nor against it what else the machine does', async () => {
    expect((await measured(120, 100, 5000)).ratio).toBeCloseTo(1.2, 9);
    expect(isMet(await measured(140, 100, 5000))).toBe(false);
  });
});
