import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FinishedFace, Slot } from '@shared/bed/index.ts';
import {
  edgesAt,
  evenGauge,
  needleRound,
  outlineOf,
  placeRound,
  seenSpan,
  stitchSeenAt,
  tubeOf,
  type Gauges,
  type Ring,
  type Shape,
  type Tube,
} from '@shared/piece/index.ts';

/** A body of 28 stitches and 40 rows in 10 cm, and a rib of 14 and 20 under it: each half as many. */
const GAUGE = { stitches: 28, rows: 40 };
const RIB = { stitches: 14, rows: 20 };
const CENTRED = { oddStitch: 'right', offset: 0, hemRows: 0 } as const;
const noneTaken = { left: 0, right: 0 };

function tube(
  shape: Shape,
  to: {
    readonly takes?: typeof noneTaken;
    readonly face?: FinishedFace;
    readonly inside?: number;
    readonly gauges?: Gauges;
  } = {},
): Tube {
  const closing = {
    gauges: to.gauges ?? evenGauge(GAUGE),
    seamAllowance: to.takes ?? noneTaken,
    finishedFace: to.face ?? 'knit',
  };
  return tubeOf(outlineOf(shape, CENTRED), closing, to.inside ?? 0);
}

const ring = (of: Tube, row: number): Ring => of.rings.find((one) => one.row === row) as Ring;
const faces = fc.constantFrom<FinishedFace[]>('knit', 'purl');

/** All stitches of a ring seen from the front, a turn of 180° away, by walking over the picture in small steps. */
function seenFrom(of: Tube, row: number, turn: number): Set<number> {
  const { radiusMm, footMm, headMm } = ring(of, row);
  const y = (footMm + headMm) / 2;
  const seen = new Set<number>();
  for (let step = 0; step < 20_000; step++) {
    // Steps in angle, not in mm: at the sides a stitch is hardly wider than a hair.
    const x = radiusMm * Math.sin(((step + 0.5) / 20_000 - 0.5) * Math.PI);
    const stitch = stitchSeenAt(of, turn, x, y);
    if (stitch) seen.add(stitch.needle);
  }
  return seen;
}

describe('the closed piece', () => {
  // From the circumference: 120 stitches at 28 in 10 cm are 428.57 mm round, 2π r
  it('is as wide across as its stitches go round', () => {
    const { rings } = tube({ kind: 'rectangle', stitches: 120, rows: 4 });
    expect(rings.map(({ radiusMm }) => radiusMm.toFixed(2))).toEqual(Array(4).fill('68.21'));
  });

  it('is a cone where the piece widens, without the stitches that the seam takes', () => {
    const shape = { kind: 'tapered', stitches: 20, stitchesAtTop: 30, rows: 40, straightRows: 5 } as const;
    const outline = outlineOf(shape, CENTRED);
    const closed = tube(shape, { takes: { left: 1, right: 2 } });
    for (const { row, first, stitches, radiusMm } of closed.rings) {
      const edges = edgesAt(outline, row);
      expect([first, first + stitches - 1]).toEqual([edges.first + 1, edges.last - 2]);
      expect(radiusMm * 2 * Math.PI).toBeCloseTo((stitches * 100) / 28);
    }
    expect(closed.rings.at(-1)?.stitches).toBe(27);
    expect(closed.radiusMm).toBe(closed.rings.at(-1)?.radiusMm);
  });

  it('stands out where a section has fewer stitches in 10 cm, each row as tall as its own gauge makes it', () => {
    const gauges = [
      { gauge: RIB, first: 1, last: 4 },
      { gauge: GAUGE, first: 5, last: Infinity },
    ];
    const closed = tube({ kind: 'rectangle', stitches: 84, rows: 6 }, { gauges });
    // Round: 84 stitches at 14 in 10 cm are 600 mm, at 28 they are 300; rows are 5 mm and 2.5 mm tall.
    const round = closed.rings.map(({ radiusMm }) => Math.round(radiusMm * 2 * Math.PI));
    expect(round).toEqual([600, 600, 600, 600, 300, 300]);
    expect(closed.rings.map(({ footMm }) => footMm)).toEqual([0, 5, 10, 15, 20, 22.5]);
    expect(closed.rings.map(({ headMm }) => headMm)).toEqual([5, 10, 15, 20, 22.5, 25]);
    expect([closed.tallMm, closed.tallestRowMm, closed.radiusMm]).toEqual([25, 5, closed.rings[0]?.radiusMm]);
    // 60 mm beside the axis there is rib (radius 95.5 mm), and nothing of the body (47.7 mm).
    expect([19, 21].map((y) => stitchSeenAt(closed, 0, 60, y)?.row)).toEqual([4, undefined]);
    expect([1, 19.9, 20.1, 22.4, 22.6, 24.9, 25.1].map((y) => stitchSeenAt(closed, 0, 0, y)?.row)).toEqual([
      1,
      4,
      5,
      5,
      6,
      6,
      undefined,
    ]);
    // Inside a hem of two rows: what is left of the rib stands on the lower edge.
    const hem = tube({ kind: 'rectangle', stitches: 84, rows: 6 }, { gauges, inside: 2 });
    expect(hem.rings.map(({ row, footMm }) => [row, footMm])).toEqual([
      [3, 0],
      [4, 5],
      [5, 10],
      [6, 12.5],
    ]);
  });

  it('leaves out the rows inside a folded hem, and rows that the seam takes whole have no width', () => {
    const hem = tube({ kind: 'rectangle', stitches: 10, rows: 9 }, { inside: 3 });
    expect(hem.rings.map(({ row }) => row)).toEqual([4, 5, 6, 7, 8, 9]);
    expect(stitchSeenAt(hem, 0, 0.1, 0.1)?.row).toBe(4);
    const taken = tube({ kind: 'rectangle', stitches: 3, rows: 2 }, { takes: { left: 2, right: 2 } });
    expect(taken.rings.map(({ stitches, radiusMm }) => [stitches, radiusMm])).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(stitchSeenAt(taken, 0, 0, 0.1)).toBeNull();
  });

  // common practice, no source: laid on the table the knit side up, L stands at
  // the right; its edges fold away from us and meet behind, so that from behind
  // the edge with L is left of the seam.
  it.each([
    { face: 'knit', left: -10, right: 9 },
    { face: 'purl', left: 9, right: -10 },
  ] as const)('has needle $left left of the seam and $right right of it, the $face side outside', (given) => {
    const closed = tube({ kind: 'rectangle', stitches: 20, rows: 2 }, { face: given.face });
    const beside = (x: number): number | undefined => stitchSeenAt(closed, 0, x, 1)?.needle;
    expect([beside(-0.5), beside(0.5)]).toEqual([given.left, given.right]);
    // Turned to the right, what was left of the seam comes to the middle.
    expect(stitchSeenAt(closed, 9, 0, 1)?.needle).toBe(given.left);
    expect(stitchSeenAt(closed, -9, 0, 1)?.needle).toBe(given.right);
  });

  it('has at the seam the first and last stitch that it leaves of every row', () => {
    fc.assert(
      fc.property(faces, fc.nat(3), fc.nat(3), (face, left, right) => {
        const shape = { kind: 'tapered', stitches: 12, stitchesAtTop: 25, rows: 30, straightRows: 2 } as const;
        const outline = outlineOf(shape, CENTRED);
        const closed = tube(shape, { face, takes: { left, right } });
        closed.rings.forEach(({ row, radiusMm, footMm, headMm }) => {
          const edges = edgesAt(outline, row);
          const beside = [-0.01, 0.01].map(
            (share) => stitchSeenAt(closed, 0, share * radiusMm, (footMm + headMm) / 2)?.needle,
          );
          const ends = [edges.first + left, edges.last - right];
          expect(beside).toEqual(face === 'knit' ? ends : ends.reverse());
        });
      }),
      { numRuns: 20 },
    );
  });

  it('shows every stitch once in a whole turn, one half of it from each side', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.integer({ min: -180, max: 180 }),
        faces,
        (stitches, turn, face) => {
          const closed = tube({ kind: 'rectangle', stitches, rows: 3 }, { face });
          const front = seenFrom(closed, 2, turn);
          const back = seenFrom(closed, 2, turn + 180);
          expect(new Set([...front, ...back]).size).toBe(stitches);
          // Only stitches that lie across the sides are seen from both.
          expect(front.size + back.size - stitches).toBeLessThanOrEqual(2);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('has stitches whose widths on the picture make up its diameter, narrower the further aside', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 300 }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (stitches, turn) => {
          const closed = tube({ kind: 'rectangle', stitches, rows: 1 });
          const one = ring(closed, 1);
          const spans = Array.from({ length: stitches }, (_, place) => seenSpan(one, place, place + 1, turn)).filter(
            (span) => span !== null,
          );
          const sum = spans.reduce((width, { left, right }) => width + right - left, 0);
          expect(sum).toBeCloseTo(2 * one.radiusMm);
          for (const { left, right } of spans) {
            const seen = stitchSeenAt(closed, turn, (left + right) / 2, 1);
            if (seen && right - left > 1e-6) {
              const place = placeRound(closed, one, seen.needle);
              expect(seenSpan(one, place, place + 1, turn)).toEqual({ left, right });
            }
          }
        },
      ),
    );
  });

  it('counts places from the seam to the right as seen, both ways', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), faces, fc.nat(199), (stitches, face, at) => {
        const closed = tube({ kind: 'rectangle', stitches, rows: 1 }, { face });
        const one = ring(closed, 1);
        const place = at % stitches;
        const needle = needleRound(closed, one, place);
        expect(placeRound(closed, one, needle)).toBe(place);
        expect(needle).toBe((face === 'knit' ? one.first + stitches - 1 - place : one.first + place) as Slot);
      }),
    );
  });
});
