/** By hand: the first needles are given; nothing is asked, so nothing is solved. */
import { label, type Run } from '../../bed/index.ts';
import { problemError } from '../../problem/index.ts';
import type { FirstNeedles, GroupOnNeedles } from '../types.ts';
import type { Demand } from './rule.ts';

export function byHand(): Demand {
  return { margin: null, gap: null, distance: () => 0, ideal: () => null };
}

/**
 * Sees that groups can lie where they were put. Throws `by-hand-count`,
 * `needle-not-on-piece`, `groups-overlap`, or `groups-out-of-order` where a
 * group lies wholly to the left of the one before it.
 */
export function checkByHand(edges: Run, groups: readonly GroupOnNeedles[], first: FirstNeedles): void {
  if (first.length !== groups.length) {
    throw problemError('by-hand-count', { given: first.length, groups: groups.length });
  }
  const blocks = groups.map(({ width }, index) => {
    const start = first[index] as number;
    return { first: start, last: start + width - 1 };
  });
  blocks.forEach((block, index) => {
    if (block.first < edges.first || block.last > edges.last) {
      const needle = label(first[index] as FirstNeedles[number]);
      throw problemError('needle-not-on-piece', { needle, first: label(edges.first), last: label(edges.last) });
    }
  });
  blocks.slice(1).forEach((block, index) => {
    const before = blocks[index] as (typeof blocks)[number];
    if (block.first > before.last) return;
    const numbers = { left: index + 1, right: index + 2 };
    if (block.last < before.first) throw problemError('groups-out-of-order', numbers);
    const stitches = Math.min(before.last, block.last) - Math.max(before.first, block.first) + 1;
    throw problemError('groups-overlap', { ...numbers, stitches });
  });
}
