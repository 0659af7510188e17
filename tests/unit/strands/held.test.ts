import { expect, test } from 'vitest';
import { mustHolds } from '@shared/strands/mending/held.ts';

test('the fewest holds have no play where each stretch between them is as long as it may be', () => {
  // Seven stitches, none over three: only the middle one parts them so. Eleven: the fourth and the eighth.
  expect(mustHolds(1, 7, 3)).toEqual([4]);
  expect(mustHolds(-5, 5, 3)).toEqual([-2, 2]);
  // One stitch less, and a hold may stand on another needle too; three need none.
  expect(mustHolds(1, 6, 3)).toEqual([]);
  expect(mustHolds(1, 3, 3)).toEqual([]);
});
