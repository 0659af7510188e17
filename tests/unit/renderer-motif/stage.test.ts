import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { contrastRatio } from '@shared/colour/index.ts';
import { makeGrid, straightCopies, type Copies } from '@shared/grid/index.ts';
import { lineGrey } from '../../../src-renderer/motif/drawing/look.ts';
import { cellAfterKey, cellOverEdge } from '../../../src-renderer/motif/stage/cursor-keys.ts';
import { announceThrottled } from '../../../src-renderer/session/announcer.ts';

describe('the cell cursor', () => {
  const size = { width: 20, height: 30 };

  it.each([
    { key: 'ArrowRight', from: [3, 4], to: [4, 4] },
    { key: 'ArrowLeft', from: [3, 4], to: [2, 4] },
    { key: 'ArrowUp', from: [3, 4], to: [3, 5] },
    { key: 'ArrowDown', from: [3, 4], to: [3, 3] },
    { key: 'ArrowLeft', from: [0, 4], to: [0, 4] },
    { key: 'ArrowUp', from: [3, 29], to: [3, 29] },
    { key: 'PageUp', from: [3, 25], to: [3, 29] },
    { key: 'PageDown', from: [3, 25], to: [3, 15] },
    { key: 'Home', from: [3, 4], to: [0, 4] },
    { key: 'End', from: [3, 4], to: [19, 4] },
    { key: 'Home', ctrlKey: true, from: [3, 4], to: [0, 0] },
    { key: 'End', ctrlKey: true, from: [3, 4], to: [19, 29] },
  ])('goes with $key from column and row $from to $to', ({ key, ctrlKey = false, from, to }) => {
    const [column, row] = from as [number, number];
    expect(cellAfterKey({ column, row }, { key, ctrlKey }, size)).toEqual({ column: to[0], row: to[1] });
  });

  it.each([
    { key: 'ArrowRight', from: [3, 1], lie: {}, to: [0, 1] },
    { key: 'ArrowDown', from: [1, 0], lie: {}, to: [1, 2] },
    // The copies at the right stand a row higher: what goes on in their row is a row lower in this one.
    { key: 'ArrowRight', from: [3, 1], lie: { laid: 'columns', step: 1 }, to: [0, 0] },
    { key: 'ArrowUp', from: [0, 2], lie: { laid: 'courses', step: 1 }, to: [3, 0] },
    { key: 'ArrowLeft', from: [2, 1], lie: {}, to: null },
  ] as const)('goes over the edge with $key from $from where all copies follow', ({ key, from, lie, to }) => {
    const grid = makeGrid(4, 3);
    const [column, row] = from;
    const tile: Copies = { ...straightCopies(grid), ...lie };
    const cell = cellOverEdge(grid, { column, row }, key, { symmetry: 'none', tile });
    expect(cell).toEqual(to && { column: to[0], row: to[1] });
    expect(cellOverEdge(grid, { column, row }, key, { symmetry: 'none', tile: null })).toBeNull();
  });

  it('leaves other keys alone', () => {
    expect(cellAfterKey({ column: 0, row: 0 }, { key: 'b', ctrlKey: false }, size)).toBeNull();
  });
});

describe('grid lines', () => {
  it.each([
    { yarns: ['#5d7591', '#fbf7ea'] },
    { yarns: ['#000000', '#ffffff'] },
    { yarns: ['#101010', '#202020'] },
    { yarns: ['#f4f4f4', '#fbf7ea'] },
    { yarns: ['#777777', '#808080'] },
    { yarns: ['#123456'] },
  ])('show on every one of $yarns', ({ yarns }) => {
    const grey = lineGrey(yarns);
    for (const colour of yarns) expect(contrastRatio(grey, colour)).toBeGreaterThan(1.65);
  });
});

describe('saying things calmly', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('says the first at once and of those that follow quickly the last', () => {
    const announced: string[] = [];
    const say = announceThrottled((text) => announced.push(text));
    for (const text of ['row 1', 'row 2', 'row 3']) say(text);
    expect(announced).toEqual(['row 1']);
    vi.advanceTimersByTime(1000);
    expect(announced).toEqual(['row 1', 'row 3']);
    say('row 4');
    expect(announced).toEqual(['row 1', 'row 3', 'row 4']);
  });
});
