import fc from 'fast-check';
import { expect, it } from 'vitest';
import { nthOf } from '../../../src-shared/reading/nth.ts';

it('finds the value that sorting would put at a place, and loses none', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 60 }), fc.nat(), (values, any) => {
      const n = any % values.length;
      const sorted = values.toSorted((a, b) => a - b);
      const moved = Float64Array.from(values);
      expect(nthOf(moved, n)).toBe(sorted[n]);
      expect([...moved].sort((a, b) => a - b)).toEqual(sorted);
    }),
  );
  expect(nthOf([], 0)).toBeUndefined();
});
