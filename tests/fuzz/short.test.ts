/** A short run of `npm run fuzz`, the same each time. */
import { describe, expect, it } from 'vitest';
import { fuzz } from './fuzz.ts';
import { READERS } from './readers.ts';

const SEED = 2026;
const COUNT = 300;

describe('spoiled inputs', () => {
  it.each(READERS.map((reader) => [reader.name, reader] as const))(
    'of %s are read or refused by name',
    async (_, reader) => {
      const { read, refused } = await fuzz(reader, SEED, COUNT);
      expect(read + refused).toBe(COUNT);
      // One that refused all would be tested on nothing but its first look; one that took all refuses nothing.
      expect(read).toBeGreaterThan(0);
      expect(refused).toBeGreaterThan(0);
    },
  );
});
