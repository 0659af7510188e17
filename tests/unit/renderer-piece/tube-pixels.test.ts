import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closedPiece } from '@shared/fabric/index.ts';
import { stitchSeenAt, type Piece, type Ring, type Tube } from '@shared/piece/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { lightOn, TubePixels, type PixelPlace } from '../../../src-renderer/piece/closed/tube-pixels.ts';
import { planOf, twoGroups } from './projects.ts';

const COLOURS = ['#6080a0', '#ffffff'];

function closed(piece: Partial<Piece> = {}): { plan: Plan; tube: Tube } {
  const project = twoGroups({ piece: { seamAllowance: { left: 1, right: 2 }, ...piece } });
  const plan = planOf(project);
  return { plan, tube: closedPiece(plan, pieceIn(project)) };
}

/** The whole tube with three pixels to spare on all sides. */
function placeOf(tube: Tube, pixelsPerMm: number): PixelPlace {
  const radius = tube.radiusMm * pixelsPerMm;
  const tall = tube.tallMm * pixelsPerMm;
  return {
    width: Math.ceil(2 * radius) + 6,
    height: Math.ceil(tall) + 6,
    axis: radius + 3,
    foot: tall + 3,
    pixelsPerMm,
  };
}

function painted({ plan, tube }: ReturnType<typeof closed>, place: PixelPlace, turn: number): Uint8ClampedArray {
  const pixels = new Uint8ClampedArray(place.width * place.height * 4).fill(7);
  new TubePixels(tube, plan.fabric, COLOURS).paint(place, turn, pixels);
  return pixels;
}

const turns = fc.double({ min: -180, max: 180, noNaN: true });

describe('the picture of the tube', () => {
  it('shows in each pixel the stitch that is there, in its light', () => {
    const piece = closed();
    const place = placeOf(piece.tube, 6);
    fc.assert(
      fc.property(turns, (turn) => {
        const pixels = painted(piece, place, turn);
        const seenAt = (x: number, y: number) =>
          stitchSeenAt(piece.tube, turn, (x - place.axis) / 6, (place.foot - y - 0.5) / 6);
        for (let y = 4; y < place.height - 4; y += 5) {
          for (let x = 4; x < place.width - 4; x++) {
            const [left, seen, right] = [seenAt(x, y), seenAt(x + 0.5, y), seenAt(x + 1, y)];
            // A pixel that two stitches share is between them.
            if (!seen || left?.needle !== seen.needle || right?.needle !== seen.needle) continue;
            const { width, first, cells } = piece.plan.fabric;
            const colour = COLOURS[cells[(seen.row - 1) * width + seen.needle - first] as number] as string;
            const red = Number.parseInt(colour.slice(1, 3), 16) * lightOn(seen.facing);
            const at = (y * place.width + x) * 4;
            expect(Math.abs((pixels[at] as number) - red)).toBeLessThanOrEqual(2);
            expect(pixels[at + 3]).toBe(255);
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  it('is as wide on every line as its ring, and open beside it', () => {
    const piece = closed();
    fc.assert(
      fc.property(turns, fc.constantFrom(0.15, 0.4, 3, 7.3), (turn, pixelsPerMm) => {
        const place = placeOf(piece.tube, pixelsPerMm);
        const pixels = painted(piece, place, turn);
        const shares = Array.from({ length: place.height }, (_, y) => {
          let share = 0;
          for (let x = 0; x < place.width; x++) share += (pixels[(y * place.width + x) * 4 + 3] as number) / 255;
          return share;
        });
        const wide = 2 * (piece.tube.rings[0] as Ring).radiusMm * pixelsPerMm;
        for (const share of shares) if (share > 0) expect(Math.abs(share - wide)).toBeLessThan(0.05);
        const tall = piece.tube.tallMm * pixelsPerMm;
        expect(Math.abs(shares.filter((share) => share > 0).length - tall)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 30 },
    );
  });

  it('is wider and its rows taller where a section has fewer of them in 10 cm, without a line left open', () => {
    const rib = { name: 'rib', rows: 2, isLined: false, tension: '', gauge: { stitches: 14, rows: 20 } } as const;
    const piece = closed({ gauge: { stitches: 28, rows: 40 }, sections: [rib] });
    fc.assert(
      fc.property(turns, fc.double({ min: 0.05, max: 3, noNaN: true }), (turn, pixelsPerMm) => {
        const place = placeOf(piece.tube, pixelsPerMm);
        const pixels = painted(piece, place, turn);
        for (let y = 0; y < place.height; y++) {
          let share = 0;
          for (let x = 0; x < place.width; x++) share += (pixels[(y * place.width + x) * 4 + 3] as number) / 255;
          const mm = (place.foot - y - 0.5) / pixelsPerMm;
          // 17 stitches round, less what lies in a pixel with rows of the other height. The rib is 2 rows of 5 mm.
          const isMixed = Math.abs(mm - 10) * pixelsPerMm <= 0.5;
          const isEdge = mm < 0 || mm > piece.tube.tallMm;
          if (isEdge) continue;
          const wide = ((mm < 10 ? 2 : 1) * 17 * (100 / 28) * pixelsPerMm) / Math.PI;
          if (isMixed) expect(share).toBeGreaterThan(0);
          else expect(Math.abs(share - wide)).toBeLessThan(0.05);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('comes round again after a whole turn', () => {
    const piece = closed();
    const place = placeOf(piece.tube, 4);
    expect(painted(piece, place, -180)).toEqual(painted(piece, place, 180));
    expect(painted(piece, place, 30)).not.toEqual(painted(piece, place, 35));
  });
});
