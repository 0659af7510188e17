import { describe, expect, it } from 'vitest';
import { longestWithin } from '@shared/strands/index.ts';

describe('the longest float within the limit', () => {
  it.each([
    { limit: { stitches: 5, mm: 25 }, gauge: 28, longest: 5, why: 'stitches bite first in fine fabric' },
    { limit: { stitches: 5, mm: 25 }, gauge: 20, longest: 5, why: 'both agree at 20 stitches' },
    { limit: { stitches: 5, mm: 25 }, gauge: 16, longest: 4, why: 'mm bite first in thick fabric' },
    { limit: { stitches: 9, mm: null }, gauge: 16, longest: 9, why: 'stitches alone' },
    { limit: { stitches: 0, mm: 25 }, gauge: 16, longest: 0, why: 'no float at all' },
  ])('is $longest stitches at $gauge in 10 cm: $why', ({ limit, gauge, longest }) => {
    expect(longestWithin(limit, { stitches: gauge, rows: 40 })).toBe(longest);
  });
});
