import { describe, expect, it } from 'vitest';
import { blankEdges, measure, trueRepeat } from '@shared/motif/repeat/index.ts';
import { readBitmap } from './bitmap.ts';

describe('bitmaps of the X11 set', () => {
  // Computed twice by brute force from the files: the smallest p with at least
  // two copies such that every cell equals the one p further on.
  it.each([
    { name: 'scales', size: [16, 16], across: 8, up: 8, blank: [0, 0, 0, 0] },
    { name: 'boxes', size: [16, 16], across: 8, up: 8, blank: [0, 0, 0, 0] },
    { name: 'cross_weave', size: [16, 16], across: 4, up: 4, blank: [0, 0, 0, 0] },
    { name: 'dimple1', size: [16, 16], across: 2, up: 2, blank: [0, 1, 0, 1] },
    { name: 'gray3', size: [4, 4], across: 4, up: 4, blank: [0, 1, 0, 1] },
    { name: 'letters', size: [48, 48], across: 48, up: 48, blank: [1, 2, 8, 7] },
    { name: 'mailfull', size: [48, 48], across: 48, up: 48, blank: [1, 1, 1, 1] },
    { name: 'escherknot', size: [216, 208], across: 216, up: 208, blank: [4, 3, 5, 4] },
  ])('$name repeats after $across columns and $up rows', ({ name, size, across, up, blank }) => {
    const grid = readBitmap(name);
    expect([grid.width, grid.height]).toEqual(size);
    expect(trueRepeat(grid)).toMatchObject({ width: across, height: up, dividesAcross: true, dividesUp: true });
    const [left, right, top, bottom] = blank;
    expect(blankEdges(grid, 0)).toEqual({ left, right, top, bottom });
  });

  // Computed: its rows as words have period 5, but a tile of 6 columns repeats
  // only with what divides 6, and a drawing needs two copies to show a repeat.
  it.each([
    { name: 'root_weave', across: 4, up: 4 },
    { name: 'box6', across: 6, up: 6 },
  ])('$name holds no repeat smaller than itself', ({ name, across, up }) => {
    expect(trueRepeat(readBitmap(name))).toMatchObject({ width: across, height: up });
  });

  // Computed by brute force from the files, in another language: every start of either way, every pair of neighbours.
  it.each([
    { name: 'scales', courses: [8, 4, 0, 2], columns: [4, 8, 1, 1], first: 'courses' },
    { name: 'boxes', courses: [8, 4, 0, 2], columns: [4, 8, 0, 2], first: 'columns' },
    { name: 'cross_weave', courses: [4, 2, 0, 2], columns: [2, 4, 0, 2], first: 'columns' },
    { name: 'gray3', courses: [4, 2, 0, 0], columns: [2, 4, 0, 0], first: 'columns' },
  ])('$name is laid in $first first, which cut its figure least', ({ name, courses, columns, first }) => {
    const { blocks } = measure(readBitmap(name), 0);
    expect(blocks[0]?.laid).toBe(first);
    const told = Object.fromEntries(
      blocks.map(({ laid, width, height, cuts, corners }) => [laid, [width, height, cuts, corners]]),
    );
    expect(told).toEqual({ courses, columns });
  });

  it.each(['root_weave', 'box6', 'dimple1', 'letters', 'mailfull'])('%s is not stepped', (name) => {
    expect(measure(readBitmap(name), 0)).toMatchObject({ step: null, blocks: [] });
  });
});
