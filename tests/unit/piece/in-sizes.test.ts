/** Values that differ from size to size, said with as little as possible. */
import { describe, expect, it } from 'vitest';
import { inAllSizes, settled, valueIn, withValueIn, withValues } from '@shared/piece/index.ts';

const SIZES = ['s', 'm', 'l'];

describe('a value of all sizes', () => {
  it('has another in one size until that is the same again', () => {
    const graded = withValueIn(inAllSizes(3), 'l', 4, SIZES);
    expect(graded).toEqual({ all: 3, but: [{ size: 'l', value: 4 }] });
    expect(SIZES.map((size) => valueIn(graded, size))).toEqual([3, 3, 4]);
    expect(withValueIn(graded, 'l', 3, SIZES)).toEqual(inAllSizes(3));
  });

  it('has its exceptions in the order of the sizes, and none of a size that is not there', () => {
    const values = withValueIn(withValueIn(inAllSizes(3), 'l', 4, SIZES), 's', 2, SIZES);
    expect(values.but.map(({ size }) => size)).toEqual(['s', 'l']);
    expect(withValueIn(values, 'gone', 9, SIZES)).toEqual(values);
    expect(withValues(3, ['m'], (size) => valueIn(values, size))).toEqual(inAllSizes(3));
  });

  it('is that of the first size where none has it any more', () => {
    const all = { all: 3, but: SIZES.map((size, at) => ({ size, value: at === 2 ? 5 : 4 })) };
    expect(settled(all, SIZES)).toEqual({ all: 4, but: [{ size: 'l', value: 5 }] });
    const some = { all: 3, but: [{ size: 'm', value: 4 }] };
    expect(settled(some, SIZES)).toBe(some);
  });
});
