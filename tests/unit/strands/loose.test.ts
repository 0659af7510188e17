/** What lies loose of a float that is hooked or latched up. */
import { expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { looseParts, looseStitches } from '@shared/strands/index.ts';

const float = (first: number, last: number, ...held: number[]) => ({
  first: first as Slot,
  last: last as Slot,
  held: held as Slot[],
});

it('is all of a float that nothing holds', () => {
  expect(looseStitches(float(-4, 3))).toBe(8);
  expect(looseParts(float(-4, 3))).toEqual([
    { first: -4, last: 3, stitches: 8, isHeldAt: { left: false, right: false } },
  ]);
});

it('is what lies between the needles that hold it, which are part of no part', () => {
  // Eight needles, held at the third and the sixth: two, two and two lie loose.
  const held = float(-4, 3, -2, 1);
  expect(looseParts(held)).toEqual([
    { first: -4, last: -3, stitches: 2, isHeldAt: { left: false, right: true } },
    { first: -1, last: 0, stitches: 2, isHeldAt: { left: true, right: true } },
    { first: 2, last: 3, stitches: 2, isHeldAt: { left: true, right: false } },
  ]);
  expect(looseStitches(held)).toBe(2);
  expect(looseStitches(float(-4, 3, 2))).toBe(6);
});

it('is nothing between neighbours that hold it', () => {
  expect(looseParts(float(0, 2, 0, 1)).map(({ stitches }) => stitches)).toEqual([0, 0, 1]);
});
