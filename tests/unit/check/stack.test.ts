import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { Stacks, type Stack, type Strand, type StrandRows } from '@shared/check/stack.ts';

type StackItem = StrandRows & Strand;

function stack(items: readonly StackItem[]): Stack[] {
  const stacks = new Stacks();
  for (const item of items) stacks.add(item, item, false);
  return stacks.gathered();
}

const float = (row: number, first: number, last: number): StackItem => ({
  row,
  next: row + 1,
  lastRow: row,
  first: first as Slot,
  last: last as Slot,
  stitches: last - first + 1,
  mm: 5 * (last - first + 1),
});

function stacks(...items: StackItem[]): string[] {
  return stack(items).map(
    ({ rows, needles, longest, count }) =>
      `rows ${rows.join('-')} slots ${needles.first}..${needles.last} longest ${longest} of ${count}`,
  );
}

describe('long floats one above the other', () => {
  it('are one if they share a needle on neighbouring rows', () => {
    expect(stacks(float(3, 0, 6), float(4, 6, 14), float(5, 10, 16))).toEqual(['rows 3-5 slots 0..16 longest 9 of 3']);
  });

  it('are two if they only touch at their ends', () => {
    expect(stacks(float(3, 0, 6), float(4, 7, 14))).toHaveLength(2);
  });

  it('are two if a row lies between them', () => {
    expect(stacks(float(3, 0, 6), float(5, 0, 6))).toHaveLength(2);
  });

  it('grow together where a wide one joins two below', () => {
    expect(stacks(float(1, 0, 5), float(1, 10, 16), float(2, 4, 12), float(3, 40, 46))).toEqual([
      'rows 1-2 slots 0..16 longest 9 of 3',
      'rows 3-3 slots 40..46 longest 7 of 1',
    ]);
  });

  it('go on from a stack that was joined to another', () => {
    // The two of row 1 become one on row 2; what follows above either of them belongs to it.
    expect(
      stacks(float(1, 0, 5), float(1, 10, 15), float(2, 0, 1), float(2, 5, 10), float(3, 1, 2), float(3, 9, 30)),
    ).toEqual(['rows 1-3 slots 0..30 longest 22 of 6']);
  });

  it('follow a carry to the row it goes to', () => {
    const carry = (row: number, next: number, first: number, last: number): StackItem => ({
      ...float(row, first, last),
      next,
      lastRow: next,
    });
    expect(stacks(carry(1, 4, 0, 9), carry(4, 6, 5, 12), carry(7, 8, 5, 12))).toEqual([
      'rows 1-6 slots 0..12 longest 10 of 2',
      'rows 7-8 slots 5..12 longest 8 of 1',
    ]);
  });
});
