import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Viewport, LEAST_CELL, MOST_CELL, type Room } from '../../../src-renderer/canvas/viewport.ts';

const room = (width: number, height: number, edge = 0): Room => ({
  width,
  height,
  left: edge,
  right: edge,
  top: edge,
  bottom: edge,
});
const views = fc
  .record({
    cellWidth: fc.double({ min: 0.5, max: 80, noNaN: true }),
    cellHeight: fc.double({ min: 0.5, max: 80, noNaN: true }),
    x: fc.double({ min: -2000, max: 2000, noNaN: true }),
    y: fc.double({ min: -2000, max: 2000, noNaN: true }),
  })
  .map(({ cellWidth, cellHeight, x, y }) => new Viewport(cellWidth, cellHeight, x, y));

describe('a view of cells', () => {
  const view = new Viewport(30, 20, 100, 500);

  it.each([
    { at: [100, 499], column: 0, row: 0 },
    { at: [129.9, 480.1], column: 0, row: 0 },
    { at: [130, 479], column: 1, row: 1 },
    { at: [99, 501], column: -1, row: -1 },
  ] as const)('finds column $column, row $row under pixel $at', ({ at, column, row }) => {
    expect(view.cellAt(at[0], at[1])).toEqual({ column, row });
  });

  it('stands row 1 at the bottom and later rows above it', () => {
    expect(view.top(0)).toBe(480);
    expect(view.top(9)).toBe(300);
    expect(view.pixels({ column: 1, row: 0, width: 2, height: 3 })).toEqual({
      left: 130,
      top: 440,
      width: 60,
      height: 60,
    });
  });

  it('finds the cell again under the middle of its own pixels', () => {
    fc.assert(
      fc.property(
        views,
        fc.integer({ min: -50, max: 250 }),
        fc.integer({ min: -50, max: 1050 }),
        (any, column, row) => {
          const { left, top, width, height } = any.pixels({ column, row, width: 1, height: 1 });
          expect(any.cellAt(left + width / 2, top + height / 2)).toEqual({ column, row });
        },
      ),
    );
  });

  it('zooms with the point under the pointer staying where it is, and never past its limits', () => {
    const factors = fc.double({ min: 0.01, max: 100, noNaN: true });
    const pixel = fc.double({ min: 0, max: 1500, noNaN: true });
    fc.assert(
      fc.property(views, factors, pixel, pixel, (any, factor, x, y) => {
        const zoomed = any.zoomedAt(factor, x, y);
        expect((x - zoomed.x) / zoomed.cellWidth).toBeCloseTo((x - any.x) / any.cellWidth, 6);
        expect((zoomed.y - y) / zoomed.cellHeight).toBeCloseTo((any.y - y) / any.cellHeight, 6);
        expect(zoomed.aspect).toBeCloseTo(any.aspect, 6);
        expect(zoomed.cellHeight).toBeGreaterThanOrEqual(LEAST_CELL);
        expect(zoomed.cellHeight).toBeLessThanOrEqual(MOST_CELL);
      }),
    );
  });

  it('changes the proportion of cells and keeps their height', () => {
    const knitted = view.withAspect(40 / 28, 100);
    expect(knitted.cellHeight).toBe(20);
    expect(knitted.cellWidth).toBeCloseTo(28.571, 3);
    expect(knitted.x).toBe(100);
  });

  it('says which cells show', () => {
    // Columns begin at 100 px: those from -4 to 29 touch 0 … 1000; rows end at 500 px: -15 to 24 touch 0 … 800.
    expect(view.cellsIn(1000, 800)).toEqual({ column: -4, row: -15, width: 35, height: 41 });
  });
});

describe('fitting a motif into the view', () => {
  const motif = { column: 0, row: 0, width: 14, height: 18 };

  it('shows it whole, in the middle, in the proportion asked for', () => {
    const view = Viewport.fit(motif, 40 / 28, room(888, 716, 40));
    const { left, top, width, height } = view.pixels(motif);
    expect(view.aspect).toBeCloseTo(40 / 28, 9);
    expect(left).toBeGreaterThanOrEqual(40);
    expect(top).toBeGreaterThanOrEqual(40 - 1e-9);
    expect(left + width / 2).toBeCloseTo(444, 6);
    expect(top + height / 2).toBeCloseTo(358, 6);
    // One of both directions is filled.
    expect(Math.min(888 - 80 - width, 716 - 80 - height)).toBeCloseTo(0, 6);
  });

  it('keeps the cells of a tiny motif from filling the wall', () => {
    expect(Viewport.fit({ ...motif, width: 2, height: 2 }, 1, room(900, 700), 48).cellHeight).toBe(48);
  });

  it('shows 1000 rows whole', () => {
    const tall = { column: 0, row: 0, width: 200, height: 1000 };
    const { top, height } = Viewport.fit(tall, 40 / 28, room(888, 716)).pixels(tall);
    expect(top).toBeCloseTo(0, 6);
    expect(height).toBeCloseTo(716, 6);
  });
});

describe('panning', () => {
  const box = { column: 0, row: 0, width: 10, height: 10 };
  const view = new Viewport(10, 10, 0, 100);

  it.each([
    { by: [5000, 0], left: 160, top: 0 },
    { by: [-5000, 0], left: -60, top: 0 },
    { by: [0, 5000], left: 0, top: 110 },
    { by: [0, -5000], left: 0, top: -60 },
    { by: [20, -30], left: 20, top: -30 },
  ] as const)('keeps 40 pixels of the motif in the view after moving by $by', ({ by, left, top }) => {
    const kept = view.pannedBy(by[0], by[1]).keeping(box, room(200, 150), 40);
    expect(kept.pixels(box)).toMatchObject({ left, top });
  });

  it.each([
    { cell: [30, 3], dx: -110, dy: 0 },
    { cell: [3, 30], dx: 0, dy: 210 },
    { cell: [-2, -9], dx: 20, dy: -40 },
    { cell: [5, 5], dx: 0, dy: 0 },
  ] as const)('brings cell $cell into the view and moves no further', ({ cell, dx, dy }) => {
    const moved = view.showing({ column: cell[0], row: cell[1], width: 1, height: 1 }, room(200, 150));
    expect([moved.x - view.x, moved.y - view.y]).toEqual([dx, dy]);
  });
});

describe('a turned view', () => {
  it('shows column c where column −1 − c stood, and finds it again', () => {
    fc.assert(
      fc.property(
        views,
        fc.integer({ min: -300, max: 300 }),
        fc.integer({ min: -300, max: 300 }),
        (view, column, row) => {
          const turned = view.turned();
          const seen = turned.pixels({ column, row, width: 1, height: 1 });
          const before = view.pixels({ column: -1 - column, row, width: 1, height: 1 });
          expect(seen.left).toBeCloseTo(before.left, 6);
          expect(seen).toMatchObject({ top: before.top, width: before.width, height: before.height });
          expect(turned.cellAt(seen.left + seen.width / 2, seen.top + seen.height / 2)).toEqual({ column, row });
          expect(turned.turned()).toEqual(view);
        },
      ),
    );
  });

  it('zooms, pans and keeps its proportion as any other', () => {
    const turned = new Viewport(30, 20, 400, 500).turned();
    const cell = turned.cellAt(130, 77);
    expect(turned.zoomedAt(2, 130, 77).cellAt(130, 77)).toEqual(cell);
    expect(turned.pannedBy(7, 9).cellAt(137, 86)).toEqual(cell);
    expect(turned.aspect).toBe(1.5);
    expect(turned.span(2, 4)).toEqual({ left: 250, right: 340 });
    // Pixels 0 … 395 lie left of the edge at 400, so they show columns 0 … 13.
    expect(turned.cellsIn(395, 100)).toMatchObject({ column: 0, width: 14 });
  });
});
