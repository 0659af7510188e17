/** Rows whose long floats lie one above the other are one stretch. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { LongOfRow } from '@shared/check/float-stacks.ts';
import type { Float } from '@shared/strands/index.ts';

const float = (first: number, last: number, yarn = 1): Float => ({
  strand: { role: 'contrast', yarn, group: null },
  first: first as Slot,
  last: last as Slot,
  stitches: last - first + 1,
  mm: 5 * (last - first + 1),
  held: [],
  isOver: true,
});

describe('long floats of two rows', () => {
  const below = new LongOfRow([float(0, 6), float(20, 30, 2)]);

  it.each([
    ['share their needles', float(0, 6), true],
    ['share one needle at the right', float(6, 12), true],
    ['share one needle at the left', float(-6, 0), true],
    ['lie side by side', float(7, 12), false],
    ['lie side by side on the other side', float(-6, -1), false],
    ['share needles in other yarns', float(0, 6, 2), false],
  ])('are one stretch if they share a needle in one yarn: they %s', (_, above, isOne) => {
    const row = new LongOfRow([float(-40, -30), above]);
    expect(row.standsOn(below)).toBe(isOne);
    expect(below.stretch.with(row) !== null).toBe(isOne);
  });

  it('are asked anew of each row that they may lie above', () => {
    const above = new LongOfRow([float(3, 9)]);
    const beside = new LongOfRow([float(10, 16)]);
    expect([below, beside, below, beside, beside].map((row) => above.standsOn(row))).toEqual([
      true,
      false,
      true,
      false,
      false,
    ]);
  });

  it('are gathered from the lowest row of the stretch, whichever rows lay above it before', () => {
    const [near, far] = [new LongOfRow([float(2, 8)]), new LongOfRow([float(6, 15)])];
    const spans = [near, far, near].map((row) =>
      below.stretch.with(row)?.stacks.map(({ yarn, stacks }) => [yarn, stacks.map(({ needles }) => needles.last)]),
    );
    expect(spans).toEqual([
      [
        [1, [8]],
        [2, [30]],
      ],
      [
        [1, [15]],
        [2, [30]],
      ],
      [
        [1, [8]],
        [2, [30]],
      ],
    ]);
  });
});
