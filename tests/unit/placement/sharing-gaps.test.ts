/** Sharing gaps out in mirrored pairs, against walking through every value of every gap. */
import { describe, expect, it } from 'vitest';
import type { GapRange } from '@shared/placement/rules/index.ts';
import { canShare, highestGap, lowestGap, mirrored } from '@shared/placement/search/mirrored.ts';
import type { Opening } from '@shared/placement/search/opening.ts';
import { sharings } from '@shared/placement/search/sharings.ts';

/** All gaps from `least` to the top of the range, in order from the left. */
function everyWay(least: readonly number[], range: GapRange): number[][] {
  return least.reduce<number[][]>(
    (begun, gap) => {
      const from = Math.max(gap, range.least);
      const values = Array.from({ length: Math.max(0, range.most - from + 1) }, (_, i) => from + i);
      return begun.flatMap((gaps) => values.map((value) => [...gaps, value]));
    },
    [[]],
  );
}

const sumOf = (gaps: readonly number[]): number => gaps.reduce((sum, gap) => sum + gap, 0);
const imbalanceOf = (gaps: readonly number[]): number =>
  gaps.reduce((sum, gap, i) => sum + Math.abs(gap - (gaps[gaps.length - 1 - i] as number)), 0) / 2;

function openingOf(sum: number, imbalance: number): Opening {
  return { left: 0, right: 0, sum, imbalance };
}

describe.each([
  { least: [] },
  { least: [2] },
  { least: [0, 0] },
  { least: [3, 0] },
  { least: [0, 1, 2] },
  { least: [4, 0, 1] },
  { least: [0, 0, 0, 0] },
  { least: [2, 0, 3, 1] },
  { least: [0, 3, 0, 0] },
  { least: [1, 0, 2, 0, 3] },
  { least: [0, 2, 0, 1, 4, 0] },
])('gaps of at least $least', ({ least }) => {
  const gaps = mirrored(least);
  const ranges = [0, 1, 2].flatMap((from) => [2, 3, 5].map((most): GapRange => ({ least: from, most })));

  it('can be shared out just when there is a way, and every way comes in order from the left', () => {
    for (const range of ranges) {
      const ways = everyWay(least, range).map((way) => ({ way, sum: sumOf(way), imbalance: imbalanceOf(way) }));
      for (let sum = 0; sum <= 5 * least.length + 1; sum++) {
        for (let imbalance = 0; imbalance <= 10; imbalance++) {
          const expected = ways.filter((one) => one.sum === sum && one.imbalance === imbalance).map(({ way }) => way);
          const opening = openingOf(sum, imbalance);
          const where = JSON.stringify({ range, sum, imbalance });
          expect(canShare(gaps, opening, range), where).toBe(expected.length > 0);
          if (expected.length > 0) expect([...sharings(gaps, opening, range)], where).toEqual(expected);
        }
      }
    }
  });

  it('lie between the bounds said of them', () => {
    const widest = { least: gaps.smallest, most: 6 };
    const ways = everyWay(least, widest);
    const beyond = ways.filter((way) => {
      if (way.length === 0) return false;
      const opening = openingOf(sumOf(way), imbalanceOf(way));
      const top = Math.max(...way);
      return top > highestGap(gaps, opening, widest) || Math.min(...way) < lowestGap(gaps, opening, widest, top);
    });
    expect(beyond).toEqual([]);
  });
});
