import { describe, expect, it } from 'vitest';
import { blankEdges, trueRepeat } from '@shared/motif/repeat/index.ts';
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
});
