/** Where several stitches at an edge are cast on or off. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Side } from '@shared/bed/index.ts';
import { atCarriage, edgesAt, outlineOf, type EdgeStep } from '@shared/piece/index.ts';

const FOOTING = { oddStitch: 'right', offset: 0, hemRows: 0 } as const;

/** Edges of the rows of 20 stitches, shaped so, each row as `-10…9`. */
function rowsOf(steps: readonly EdgeStep[], startSide: Side, increases: 'both-edges' | 'carriage-side' = 'both-edges') {
  const outline = outlineOf({ kind: 'steps', stitches: 20, rows: 6, steps }, FOOTING);
  const knitted = atCarriage(outline, { startSide, machine: { increases } });
  return [1, 2, 3, 4, 5, 6].map((row) => `${edgesAt(knitted, row).first}…${edgesAt(knitted, row).last}`);
}

describe('shaping where the carriage stands', () => {
  it('casts off on both sides one row apart, first where the carriage stands', () => {
    const armhole = [{ row: 3, left: -4, right: -4 }];
    expect(rowsOf(armhole, 'right')).toEqual(['-10…9', '-10…9', '-10…5', '-6…5', '-6…5', '-6…5']);
    expect(rowsOf(armhole, 'left')).toEqual(['-10…9', '-10…9', '-6…9', '-6…5', '-6…5', '-6…5']);
  });

  it('leaves one stitch at each edge where it is asked for', () => {
    const steps = [{ row: 3, left: -1, right: 1 }];
    expect(rowsOf(steps, 'right')).toEqual(['-10…9', '-10…9', '-9…10', '-9…10', '-9…10', '-9…10']);
  });

  it('makes one stitch at the carriage alone on a machine that can do no other, and takes one at both', () => {
    expect(rowsOf([{ row: 3, left: 1, right: 1 }], 'right', 'carriage-side')[2]).toBe('-10…10');
    expect(rowsOf([{ row: 3, left: 1, right: 1 }], 'right', 'carriage-side')[3]).toBe('-11…10');
    expect(rowsOf([{ row: 3, left: -1, right: -1 }], 'right', 'carriage-side')[2]).toBe('-9…8');
  });

  it('does what has waited with what comes on the next row', () => {
    const steps = [
      { row: 3, left: -3, right: 0 },
      { row: 4, left: -2, right: 0 },
    ];
    expect(rowsOf(steps, 'right')).toEqual(['-10…9', '-10…9', '-10…9', '-5…9', '-5…9', '-5…9']);
  });

  it('leaves the last row as it was asked for: none follows', () => {
    expect(rowsOf([{ row: 6, left: 0, right: -4 }], 'right')[5]).toBe('-10…5');
  });
});
