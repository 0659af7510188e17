import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  evenGauge,
  layOut,
  lengthMm,
  rowFootMm,
  rowHeadMm,
  rowsBelow,
  runOf,
  type Gauges,
} from '@shared/piece/index.ts';

const BODY = { stitches: 28, rows: 40 };
const RIB = { stitches: 14, rows: 20 };
/** A rib on rows 1 … 4. */
const RIBBED: Gauges = [
  { gauge: RIB, first: 1, last: 4 },
  { gauge: BODY, first: 5, last: Infinity },
];

/** Runs of some rows and gauges, the last of them without an end. */
const anyGauges = fc
  .array(
    fc.record({
      rows: fc.integer({ min: 1, max: 40 }),
      gauge: fc.record({
        stitches: fc.double({ min: 8, max: 60, noNaN: true }),
        rows: fc.double({ min: 8, max: 90, noNaN: true }),
      }),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((runs): Gauges => {
    let below = 0;
    return runs.map(({ rows, gauge }, index) => {
      const first = below + 1;
      below += rows;
      return { gauge, first, last: index + 1 === runs.length ? Infinity : below };
    });
  });

describe('the piece laid out by its gauges', () => {
  // 100 mm / 14 = 7.143 mm a stitch, 100 mm / 28 = 3.571 mm; rows 100 / 20 = 5 mm and 100 / 40 = 2.5 mm
  it('has in each row stitches as wide as the gauge of its section makes them', () => {
    const laid = layOut(RIBBED);
    expect([1, 4, 5, 99].map((row) => runOf(laid, row).stitchMm.toFixed(3))).toEqual([
      '7.143',
      '7.143',
      '3.571',
      '3.571',
    ]);
  });

  it('has rows as tall as the gauge of their section makes them, one on the other', () => {
    const laid = layOut(RIBBED);
    expect([1, 2, 4, 5, 6, 7].map((row) => rowFootMm(laid, row))).toEqual([0, 5, 15, 20, 22.5, 25]);
    expect([1, 4, 5].map((row) => rowHeadMm(laid, row))).toEqual([5, 20, 22.5]);
    expect([-5, 0, 2.5, 19, 20, 21.25, 25].map((mm) => rowsBelow(laid, mm))).toEqual([-1, 0, 0.5, 3.8, 4, 4.5, 6]);
  });

  it('counts heights from the lowest row that is laid out', () => {
    const laid = layOut(RIBBED, 3);
    expect([3, 4, 5, 6].map((row) => rowFootMm(laid, row))).toEqual([0, 5, 10, 12.5]);
    expect(rowsBelow(laid, 11.25)).toBe(2.5);
    expect(layOut(RIBBED, 9).map(({ first, footMm }) => [first, footMm])).toEqual([[9, 0]]);
  });

  it('is the even grid where there is one gauge', () => {
    const laid = layOut(evenGauge(BODY));
    for (let row = 1; row < 400; row += 7) {
      expect(rowFootMm(laid, row)).toBe((row - 1) * (100 / 40));
      expect(runOf(laid, row).stitchMm).toBe(100 / 28);
    }
  });

  it('finds every row again at its middle, as high as the lengths of the rows below it', () => {
    fc.assert(
      fc.property(anyGauges, fc.integer({ min: 1, max: 5 }), fc.nat(250), (gauges, from, up) => {
        const laid = layOut(gauges, from);
        const row = from + up;
        const [foot, head] = [rowFootMm(laid, row), rowHeadMm(laid, row)];
        expect(from + Math.floor(rowsBelow(laid, (foot + head) / 2))).toBe(row);
        expect(head).toBeCloseTo(lengthMm(gauges, from, row), 6);
      }),
    );
  });
});
