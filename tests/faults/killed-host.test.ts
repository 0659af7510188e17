/** A short run of `npm run kills`. */
import { expect, it } from 'vitest';
import { chanceOf } from '../kills/chance.ts';
import { killWhileSaving } from '../kills/while-saving.ts';

it('a host that is killed while it saves leaves one whole version, and the next start no litter', async () => {
  const { kills, saves } = await killWhileSaving(5, chanceOf(11));
  expect(kills).toBe(5);
  // It was saving, not merely starting.
  expect(saves).toBeGreaterThan(0);
});
