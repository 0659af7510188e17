/** A short run of `npm run kills`. */
import { expect, it } from 'vitest';
import { chanceOf } from '../kills/chance.ts';
import { killWhileSaving } from '../kills/while-saving.ts';

it('a host that is killed while it saves leaves one whole version, and the next start no litter', async () => {
  const { kills, saves } = await killWhileSaving(2, chanceOf(11));
  expect(kills).toBe(2);
  // Each was saving, not merely starting.
  expect(saves).toBeGreaterThanOrEqual(2);
});
