import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Gauge } from '@shared/piece/index.ts';
import { Viewport } from '../../../src-renderer/canvas/viewport.ts';
import { laidBox, LaidView, type Laying } from '../../../src-renderer/piece/drawing/laid-view.ts';
import { stepsOf } from '../../../src-renderer/piece/drawing/outline.ts';
import { planOf, projectOf } from './projects.ts';

const BODY = { stitches: 28, rows: 40 };

/** 20 needles L10 … R10 on 10 rows, the lowest 4 of them a rib of its own gauge, or of that of the body. */
function laying(rib: Gauge | null): Laying {
  const project = projectOf(['.#.', '#.#'], [1], {
    piece: {
      shape: { kind: 'rectangle', stitches: 20, rows: 10 },
      gauge: BODY,
      sections: [{ name: 'rib', rows: 4, isLined: false, gauge: rib, tension: '' }],
    },
  });
  return { plan: planOf(project), project };
}

/** Stitches of the body 10 pixels wide and 7 tall, the middle of the bed at 300, the cast-on at 500. */
const WHOLE = new Viewport(10, 7, 300, 500);
/** Half as many in 10 cm: 100 / 14 = 7.143 mm a stitch beside 100 / 28 = 3.571 mm, rows of 5 mm beside 2.5 mm. */
const HALF = { stitches: 14, rows: 20 };

describe('the flat piece, each section by its own gauge', () => {
  it('is one view where all sections have one gauge', () => {
    for (const own of [null, BODY]) {
      const laid = new LaidView(WHOLE, laying(own));
      expect(laid.parts).toEqual([{ first: 1, last: 10, view: WHOLE }]);
      expect(laidBox(laying(own))).toEqual({ column: -10, row: 0, width: 20, height: 10 });
    }
  });

  it('has a rib of half as many stitches twice as wide and tall, centred on the bed, and its body on it', () => {
    const laid = new LaidView(WHOLE, laying(HALF));
    expect([1, 4].map((row) => laid.at(row).span(-10, 9))).toEqual(Array(2).fill({ left: 100, right: 500 }));
    expect([5, 10].map((row) => laid.at(row).span(-10, 9))).toEqual(Array(2).fill({ left: 200, right: 400 }));
    // Upper edges: 500 − 14 a row of the rib, then 7 a row of the body.
    expect([1, 2, 4, 5, 10].map((row) => laid.at(row).top(row - 1))).toEqual([486, 472, 444, 437, 402]);
    expect(laid.at(5).top(3)).toBe(444);
    // As many stitches of the body: 40 across; 8 rows of it as tall as the rib, and 6 of its own.
    expect(laidBox(laying(HALF))).toEqual({ column: -20, row: 0, width: 40, height: 14 });
  });

  it('finds the stitch under the pointer by the section it lies on', () => {
    const laid = new LaidView(WHOLE, laying(HALF));
    expect(laid.spotAt({ x: 345, y: 450 })).toEqual({ needle: 2, row: 4 });
    expect(laid.spotAt({ x: 345, y: 440 })).toEqual({ needle: 4, row: 5 });
    expect(laid.spotAt({ x: 345, y: 501 }).row).toBe(0);
    expect(laid.spotAt({ x: 345, y: 401 }).row).toBe(11);
    // The ruler goes by the row above it: the lowest one, or what of the piece is lowest in view.
    expect([510, 450, 440, 300].map((y) => laid.rowAtHeight(y).row)).toEqual([1, 4, 5, 10]);
    expect([510, 440].map((y) => laid.rowAtHeight(y).view.columnWidth)).toEqual([20, 10]);
  });

  it('finds every stitch again in the middle of where it is drawn, from both sides', () => {
    fc.assert(
      fc.property(
        fc.record({
          stitches: fc.double({ min: 8, max: 60, noNaN: true }),
          rows: fc.double({ min: 8, max: 90, noNaN: true }),
        }),
        fc.boolean(),
        fc.integer({ min: 1, max: 10 }),
        fc.integer({ min: -10, max: 9 }),
        (rib, isTurned, row, needle) => {
          const laid = new LaidView(isTurned ? WHOLE.turned() : WHOLE, laying(rib));
          const { left, top, width, height } = laid
            .at(row)
            .pixels({ column: needle, row: row - 1, width: 1, height: 1 });
          expect(laid.spotAt({ x: left + width / 2, y: top + height / 2 })).toEqual({ needle, row });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('leads from a needle of the body down along its stitches in the rib', () => {
    const laid = new LaidView(WHOLE, laying(HALF));
    const way = laid.wayDown(6, 437, 520, (view) => view.left(-3));
    expect(way).toEqual([
      { x: 270, y: 437 },
      { x: 270, y: 444 },
      { x: 240, y: 444 },
      { x: 240, y: 520 },
    ]);
    // One that ends above the rib goes straight.
    expect(laid.wayDown(6, 437, 440, (view) => view.left(-3))).toHaveLength(2);
  });

  it('frames stitches of both sections with a step where they meet', () => {
    const laid = new LaidView(WHOLE, laying(HALF));
    expect(laid.corners(-1, 1, 4, 5)).toEqual([
      { x: 290, y: 437 },
      { x: 320, y: 437 },
      { x: 320, y: 444 },
      { x: 340, y: 444 },
      { x: 340, y: 458 },
      { x: 280, y: 458 },
      { x: 280, y: 444 },
      { x: 290, y: 444 },
    ]);
    expect(laid.corners(-1, 1, 6, 7, 2)).toEqual([
      { x: 288, y: 421 },
      { x: 322, y: 421 },
      { x: 322, y: 439 },
      { x: 288, y: 439 },
    ]);
  });

  it('has a step in its outline where a section of another gauge begins', () => {
    const { outline } = laying(HALF).plan;
    expect(stepsOf(outline).map(({ from, to }) => [from, to])).toEqual([[0, 10]]);
    expect(stepsOf(outline, [1, 5]).map(({ from, to }) => [from, to])).toEqual([
      [0, 4],
      [4, 10],
    ]);
  });
});
