import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PictureView, type PictureRoom } from '../../../src-renderer/canvas/picture-view.ts';

const rooms = fc.record({
  picture: fc.record({ width: fc.integer({ min: 1, max: 9000 }), height: fc.integer({ min: 1, max: 9000 }) }),
  view: fc.record({ width: fc.integer({ min: 80, max: 1600 }), height: fc.integer({ min: 80, max: 1200 }) }),
  margin: fc.constant(16),
});

describe('a view of a picture', () => {
  const room: PictureRoom = { picture: { width: 400, height: 200 }, view: { width: 232, height: 300 }, margin: 16 };

  it('shows all of it in the middle, the margin clear', () => {
    const { scale, x, y } = PictureView.fit(room);
    expect({ scale, x, y }).toEqual({ scale: 0.5, x: 16, y: 100 });
  });

  it('is all of it again once zoomed out', () => {
    const near = PictureView.fit(room).zoomedAt(2, 100, 100).kept(room);
    expect(near?.scale).toBe(1);
    expect(near?.zoomedAt(0.5, 20, 30).kept(room)).toBeNull();
  });

  it('goes no nearer than 32 times what fits', () => {
    expect(PictureView.fit(room).zoomedAt(1000, 0, 0).kept(room)?.scale).toBe(16);
  });

  it('is panned no further than the edge of the picture and its margin', () => {
    const near = PictureView.fit(room).zoomedAt(8, 0, 0);
    expect(near.pannedBy(9999, 9999).kept(room)).toMatchObject({ x: 16, y: 16 });
    expect(near.pannedBy(-9999, -9999).kept(room)).toMatchObject({ x: 232 - 16 - 1600, y: 300 - 16 - 800 });
  });

  it('keeps the point under the pointer where it is zoomed, and finds points where they are seen', () => {
    fc.assert(
      fc.property(rooms, fc.double({ min: 0.2, max: 20, noNaN: true }), (room, factor) => {
        const fit = PictureView.fit(room);
        const at = { x: room.view.width / 3, y: room.view.height / 4 };
        const point = fit.under(at);
        const seen = fit.zoomedAt(factor, at.x, at.y).seen(point);
        expect(seen.x).toBeCloseTo(at.x, 6);
        expect(seen.y).toBeCloseTo(at.y, 6);
      }),
    );
  });

  it('stays as it is once it is kept', () => {
    const moves = fc.array(fc.tuple(fc.double({ min: 0.3, max: 3, noNaN: true }), fc.integer({ min: -500, max: 500 })));
    fc.assert(
      fc.property(rooms, moves, (room, moves) => {
        const kept = moves
          .reduce((view, [factor, by]) => view.zoomedAt(factor, 50, 60).pannedBy(by, -by), PictureView.fit(room))
          .kept(room);
        const again = kept?.kept(room) ?? kept;
        expect(again?.x ?? 0).toBeCloseTo(kept?.x ?? 0, 6);
        expect(again?.y ?? 0).toBeCloseTo(kept?.y ?? 0, 6);
        expect(again?.scale ?? 0).toBeCloseTo(kept?.scale ?? 0, 9);
      }),
    );
  });

  it('brings a point into view and no further', () => {
    const near = new PictureView(4, 0, 0);
    expect(near.showing({ x: 20, y: 20 }, room.view, 32)).toBe(near);
    const moved = near.showing({ x: 100, y: 10 }, room.view, 32);
    expect(moved.seen({ x: 100, y: 10 })).toEqual({ x: 200, y: 40 });
  });
});
