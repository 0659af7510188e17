/** Shapes on fewer or more stitches for the same width. */
import { describe, expect, it } from 'vitest';
import { scaledAcross, type Shape } from '@shared/piece/index.ts';

describe('a shape scaled across', () => {
  it.each<[Shape, number, Shape | null]>([
    [{ kind: 'rectangle', stitches: 100, rows: 40 }, 0.8, { kind: 'rectangle', stitches: 80, rows: 40 }],
    [
      { kind: 'tapered', stitches: 90, stitchesAtTop: 121, rows: 140, straightRows: 3 },
      0.5,
      { kind: 'tapered', stitches: 45, stitchesAtTop: 61, rows: 140, straightRows: 3 },
    ],
    [
      {
        kind: 'body',
        stitches: 100,
        stitchesAtWaist: 90,
        stitchesAtChest: 110,
        rowsToWaist: 20,
        rowsToChest: 20,
        rows: 60,
      },
      0.9,
      {
        kind: 'body',
        stitches: 90,
        stitchesAtWaist: 81,
        stitchesAtChest: 99,
        rowsToWaist: 20,
        rowsToChest: 20,
        rows: 60,
      },
    ],
    // Edges stand 1, 2, 3 and 4 stitches out; at half that 0.5, 1, 1.5 and 2, each to the nearest: 1, 1, 2, 2.
    [
      {
        kind: 'steps',
        stitches: 20,
        rows: 10,
        steps: [2, 4, 6, 8].map((row) => ({ row, left: 1, right: 0 })),
      },
      0.5,
      {
        kind: 'steps',
        stitches: 10,
        rows: 10,
        steps: [
          { row: 2, left: 1, right: 0 },
          { row: 6, left: 1, right: 0 },
        ],
      },
    ],
    [{ kind: 'rectangle', stitches: 1, rows: 4 }, 0.4, null],
    [{ kind: 'rectangle', stitches: 600, rows: 4 }, 2, null],
  ])('%j by %f', (shape, ratio, scaled) => {
    expect(scaledAcross(shape, ratio)).toEqual(scaled);
  });
});
