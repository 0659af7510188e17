/** A short run of `npm run kills`. */
import { expect, it } from 'vitest';
import { chanceOf } from '../kills/chance.ts';
import { killWhileSaving } from '../kills/while-saving.ts';

it.each([11, 12])(
  'a host that is killed while it saves leaves one whole version, and the next start no litter: seed %i',
  async (seed) => {
    const { kills, saves } = await killWhileSaving(1, chanceOf(seed));
    expect(kills).toBe(1);
    // It was saving, not merely starting.
    expect(saves).toBeGreaterThanOrEqual(1);
  },
);
