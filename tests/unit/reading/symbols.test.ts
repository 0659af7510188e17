/** Signs in one ink: told apart, named by number, and found where they stand. */
import { describe, expect, it } from 'vitest';
import { finish } from '@shared/reading/index.ts';
import { sortSymbols } from '../../../src-shared/reading/sort-symbols.ts';
import { lookAtSymbols, SYMBOL_NUMBERS } from '../../../src-shared/reading/symbols.ts';

const CELL = 18;

type Sign = (x: number, y: number) => boolean;
const none: Sign = () => false;
const upright: Sign = (x) => Math.abs(x) < 0.08;
const slash: Sign = (x, y) => Math.abs(x + y) < 0.1;
const disc: Sign = (x, y) => Math.hypot(x, y) < 0.26;

/** A straightened chart of `columns` across; `right` moves every sign by so much of a cell. */
function drawn(signs: readonly Sign[], columns: number, right = 0): Float64Array {
  const rows = signs.length / columns;
  const [width, height] = [columns * CELL, rows * CELL];
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [column, fromTop] = [Math.floor(x / CELL), Math.floor(y / CELL)];
      const sign = signs[(rows - 1 - fromTop) * columns + column] as Sign;
      if (sign((x + 0.5) / CELL - column - 0.5 - right, (y + 0.5) / CELL - fromTop - 0.5)) {
        rgba.set([40, 40, 40, 255], (y * width + x) * 4);
      }
    }
  }
  const still = { across: () => 0, up: () => 0, astray: null };
  return finish(lookAtSymbols({ width, height, rgba }, columns, rows, still));
}

const mixed = Array.from({ length: 120 }, (_, i) => [none, none, upright, slash, disc, none][(i * 7) % 6] as Sign);

describe('signs in one ink', () => {
  it('are as many yarns as there are signs, the empty cell the ground', () => {
    const { yarns, colours } = sortSymbols(drawn(mixed, 12), null);
    expect(colours).toHaveLength(4);
    expect(colours[0]).toBe('#ffffff');
    for (const [cell, sign] of mixed.entries()) {
      expect(yarns[cell] === 0).toBe(sign === none);
      expect(yarns[cell]).toBe(yarns[mixed.indexOf(sign)]);
    }
  });

  it('are found where they stand when all lie to one side', () => {
    const still = drawn(mixed, 12);
    const moved = drawn(mixed, 12, 0.2);
    const off = Math.max(...still.map((value, i) => Math.abs(value - (moved[i] as number))));
    expect(off).toBeLessThan(0.25);
    expect([...sortSymbols(moved, null).yarns]).toEqual([...sortSymbols(still, null).yarns]);
  });

  it('are one each, though some of them lie a little to the side', () => {
    // The right half of the chart lies off by less than the place that cells are looked at by.
    const [still, moved] = [drawn(mixed, 12), drawn(mixed, 12, 1 / CELL)];
    const half = still.map((value, i) => (Math.floor(i / SYMBOL_NUMBERS) % 12 < 6 ? value : (moved[i] as number)));
    const { yarns, colours } = sortSymbols(half, null);
    expect(colours).toHaveLength(4);
    for (const [cell, sign] of mixed.entries()) expect(yarns[cell]).toBe(yarns[mixed.indexOf(sign)]);
  });

  it('are not made of dirt, and a cell that has some is to be looked at', () => {
    const speck: Sign = (x, y) => Math.hypot(x - 0.2, y + 0.1) < 0.12;
    const signs = [...mixed, ...mixed].map((sign, i) => (i === 0 || i === 125 ? speck : sign));
    const { colours, margins, yarns } = sortSymbols(drawn(signs, 12), null);
    expect(colours).toHaveLength(4);
    expect([yarns[0], yarns[125]]).toEqual([0, 0]);
    expect([margins[0], margins[125]]).toEqual([0, 0]);
    expect(margins[6]).toBeGreaterThan(0.5);
    // Who says that there is a yarn more has it.
    expect(sortSymbols(drawn(signs, 12), 5).colours).toHaveLength(5);
  });

  it('are made as many as were asked for, the most alike one', () => {
    expect(sortSymbols(drawn(mixed, 12), 2).colours).toHaveLength(2);
    expect(sortSymbols(drawn(mixed, 12), 3).colours).toHaveLength(3);
  });

  it('are none in a blank chart', () => {
    const blank = sortSymbols(drawn(new Array<Sign>(60).fill(none), 12), null);
    expect(blank.colours).toHaveLength(1);
  });

  it('are told by darkness against their own paper, not by light', () => {
    const signs = drawn([upright, none], 2);
    expect(Math.max(...signs.subarray(0, SYMBOL_NUMBERS))).toBeGreaterThan(0.3);
    expect(Math.max(...signs.subarray(SYMBOL_NUMBERS))).toBeLessThan(0.05);
  });
});
