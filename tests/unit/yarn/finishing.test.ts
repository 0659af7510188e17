/** Yarn for casting off and sewing up. 3 to 4 widths, 1½ to 2 lengths: common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Piece } from '@shared/piece/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { finishingOf, type Finishing } from '@shared/yarn/index.ts';
import { projectWith } from '../fabric/pieces.ts';

/** 20 stitches of 5 mm and 30 rows of 4 mm. */
function of(to: Partial<Piece>): Finishing {
  const gauge = { stitches: 20, rows: 25 };
  const piece = pieceIn(projectWith({ motif: ['X'], copies: [1], stitches: 20, rows: 30, piece: { gauge, ...to } }));
  const { outline, gauges } = makePlan(piece);
  return finishingOf(piece, outline, gauges);
}

describe('what main takes beside its stitches', () => {
  it('is 3 to 4 times the width of the last row for casting off', () => {
    expect(of({}).castOff).toEqual({ widthMm: 100, mm: { least: 300, most: 400 } });
    // 40 rows of 4 mm below, and the last row is 30 stitches wide.
    const wider = of({ shape: { kind: 'tapered', stitches: 20, stitchesAtTop: 30, rows: 40, straightRows: 2 } });
    expect(wider.castOff).toEqual({ widthMm: 150, mm: { least: 450, most: 600 } });
  });

  it('is nothing for casting off where it comes off otherwise', () => {
    expect(of({ ends: 'waste-yarn' }).castOff).toBeNull();
    expect(of({ ends: 'on-a-thread' }).castOff).toBeNull();
  });

  it('is 1½ to 2 times the length of a seam, of which each edge is half', () => {
    expect(of({ seamAllowance: { left: 0, right: 0 } }).sewing).toBeNull();
    const half = { seamMm: 60, mm: { least: 90, most: 120 } };
    expect(of({ seamAllowance: { left: 1, right: 0 } }).sewing).toEqual(half);
    expect(of({ seamAllowance: { left: 0, right: 2 } }).sewing).toEqual(half);
    expect(of({ seamAllowance: { left: 1, right: 1 } }).sewing).toEqual({ seamMm: 120, mm: { least: 180, most: 240 } });
  });

  it('goes by the rows as they are knitted, where a section has a gauge of its own', () => {
    const sections = [{ name: 'band', rows: 10, isLined: false, gauge: { stitches: 20, rows: 50 }, tension: '' }];
    // 10 rows of 2 mm and 20 of 4 mm.
    expect(of({ sections, seamAllowance: { left: 1, right: 1 } }).sewing?.seamMm).toBe(100);
  });
});
