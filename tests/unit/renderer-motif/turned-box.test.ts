/** A picture to trace scaled by its corners and turned by its handle. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Viewport } from '../../../src-renderer/canvas/viewport.ts';
import {
  cornerSeen,
  middleOf,
  scaledTo,
  stretchOf,
  turnedTo,
  turnHandleSeen,
  type SeenBy,
} from '../../../src-renderer/motif/underlay/turned-box.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const placed = fc.record({
  left: number(-20, 20),
  bottom: number(-20, 20),
  columns: number(2, 60),
  rows: number(2, 60),
  turn: number(-180, 180),
});
/** Cells in the proportion of the gauge, or in another one. */
const seenBy: fc.Arbitrary<SeenBy> = fc
  .record({
    cell: number(4, 40),
    shown: number(0.6, 1.8),
    aspect: number(0.6, 1.8),
    x: number(-99, 99),
    isKnitted: fc.boolean(),
  })
  .map(({ cell, shown, aspect, x, isKnitted }) => ({
    view: new Viewport(cell * (isKnitted ? aspect : shown), cell, x, 300),
    aspect,
  }));
const corner = fc.nat(3);
const by = fc.record({ x: number(-80, 80), y: number(-80, 80) });

describe('a turned picture', () => {
  it('has its corners at the ends of its sides, and straight ones where it is not turned', () => {
    const seen = { view: new Viewport(10, 10, 0, 100), aspect: 1 };
    const box = { left: 1, bottom: 2, columns: 4, rows: 3, turn: 0 };
    expect([0, 1, 2, 3].map((index) => cornerSeen(box, index, seen))).toEqual([
      { x: 10, y: 50 },
      { x: 50, y: 50 },
      { x: 50, y: 80 },
      { x: 10, y: 80 },
    ]);
    // A quarter turn clockwise about the middle (30, 65): what was at the upper left comes to the upper right.
    const turned = cornerSeen({ ...box, turn: 90 }, 0, seen);
    expect([turned.x, turned.y].map((value) => Math.round(value * 1e6) / 1e6)).toEqual([45, 45]);
  });

  it('is the image of itself as the page turns and stretches it', () => {
    fc.assert(
      fc.property(placed, seenBy, corner, (box, seen, index) => {
        const { view } = seen;
        // What the style says: scaleX, rotate and scaleX back, about the middle of an image of that size.
        const [across, down] = [
          [-1, -1],
          [1, -1],
          [1, 1],
          [-1, 1],
        ][index] as [number, number];
        const stretch = stretchOf(seen);
        const x = (across * box.columns * view.cellWidth) / 2 / stretch;
        const y = (down * box.rows * view.cellHeight) / 2;
        const angle = (box.turn * Math.PI) / 180;
        const middle = middleOf(box, seen);
        const at = cornerSeen(box, index, seen);
        expect(at.x).toBeCloseTo(middle.x + stretch * (x * Math.cos(angle) - y * Math.sin(angle)), 6);
        expect(at.y).toBeCloseTo(middle.y + x * Math.sin(angle) + y * Math.cos(angle), 6);
      }),
    );
  });
});

describe('a corner that is dragged', () => {
  it('leaves the opposite corner where it is, and the picture in its proportion', () => {
    fc.assert(
      fc.property(placed, seenBy, corner, by, (box, seen, index, way) => {
        const { columns, rows, middle } = scaledTo(box, index, way, seen);
        const after = { ...box, columns, rows, left: middle.column - columns / 2, bottom: middle.row - rows / 2 };
        const [was, is] = [box, after].map((each) => cornerSeen(each, (index + 2) % 4, seen)) as [
          { x: number; y: number },
          { x: number; y: number },
        ];
        expect(is.x).toBeCloseTo(was.x, 5);
        expect(is.y).toBeCloseTo(was.y, 5);
        expect(columns / rows).toBeCloseTo(box.columns / box.rows, 5);
        expect(Math.min(columns, rows)).toBeGreaterThanOrEqual(1 - 1e-9);
      }),
    );
  });

  it('goes along the diagonal with the pointer', () => {
    fc.assert(
      fc.property(placed, seenBy, corner, number(0.7, 2), (box, seen, index, factor) => {
        const [from, fixed] = [cornerSeen(box, index, seen), cornerSeen(box, (index + 2) % 4, seen)];
        const way = { x: (from.x - fixed.x) * (factor - 1), y: (from.y - fixed.y) * (factor - 1) };
        expect(scaledTo(box, index, way, seen).columns).toBeCloseTo(box.columns * factor, 5);
      }),
    );
  });
});

describe('the handle that turns', () => {
  it('stands over the upper edge, and follows the pointer round the middle', () => {
    fc.assert(
      fc.property(placed, seenBy, number(-170, 170), (box, seen, degrees) => {
        const from = turnHandleSeen(box, seen);
        const to = turnHandleSeen({ ...box, turn: box.turn + degrees }, seen);
        const turned = turnedTo(box, { x: to.x - from.x, y: to.y - from.y }, seen);
        // To a tenth of a degree or an even angle close by, and however often round.
        const off = turned - (box.turn + degrees);
        const most = turned % 15 === 0 ? 0.701 : 0.051;
        expect(Math.abs(off - 360 * Math.round(off / 360))).toBeLessThanOrEqual(most);
      }),
    );
  });
});
