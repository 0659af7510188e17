import { describe, expect, it } from 'vitest';
import { slipAfter } from '../../../src-renderer/motif/slip-actions.ts';

describe('walking the cells that break the repeat', () => {
  const slips = [
    { column: 4, row: 2, expected: 1 },
    { column: 7, row: 2, expected: 1 },
    { column: 1, row: 5, expected: 0 },
  ];

  it.each([
    { from: [0, 0], next: 0, before: 2 },
    { from: [4, 2], next: 1, before: 2 },
    { from: [5, 2], next: 1, before: 0 },
    { from: [7, 2], next: 2, before: 0 },
    { from: [1, 5], next: 0, before: 1 },
    { from: [9, 9], next: 0, before: 2 },
  ])('goes from column and row $from to slip $next, and back to $before', ({ from, next, before }) => {
    const [column = 0, row = 0] = from;
    expect(slipAfter(slips, { column, row }, 1)).toBe(next);
    expect(slipAfter(slips, { column, row }, -1)).toBe(before);
  });

  it('goes nowhere where nothing breaks the repeat', () => {
    expect(slipAfter([], { column: 0, row: 0 }, 1)).toBe(-1);
    expect(slipAfter([], { column: 0, row: 0 }, -1)).toBe(-1);
  });
});
