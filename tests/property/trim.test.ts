import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridFromText, gridToText, sameGrid, type Grid } from '@shared/grid/index.ts';
import { blankEdges, cropToRepeat, startsAcross, trimBlank, trueRepeat } from '@shared/motif/repeat/index.ts';

const tiles = fc
  .tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 8 }))
  .chain(([width, height]) =>
    fc
      .uint8Array({ minLength: width * height, maxLength: width * height, max: 1 })
      .map((cells): Grid => ({ width, height, cells })),
  );

/** The plane a tile fills, seen through a window. */
function fill(tile: Grid, width: number, height: number, column = 0, row = 0): Grid {
  const cells = Uint8Array.from({ length: width * height }, (_, index) => {
    const c = (column + (index % width)) % tile.width;
    const r = (row + Math.floor(index / width)) % tile.height;
    return tile.cells[r * tile.width + c] as number;
  });
  return { width, height, cells };
}

describe('cropping to one repeat', () => {
  it('fills the same plane, wherever it starts', () => {
    fc.assert(
      fc.property(tiles, fc.nat(), fc.nat(), (tile, column, row) => {
        const drawing = fill(tile, tile.width * 3, tile.height * 3);
        const repeat = trueRepeat(drawing);
        const start = { column: column % repeat.width, row: row % repeat.height };
        const one = cropToRepeat(drawing, repeat, start);
        const again = fill(one, drawing.width, drawing.height);
        expect(sameGrid(again, fill(drawing, drawing.width, drawing.height, start.column, start.row))).toBe(true);
      }),
    );
  });

  it('puts the widest blank first or last', () => {
    fc.assert(
      fc.property(tiles, (tile) => {
        const repeat = { width: tile.width, height: tile.height };
        const { blankFirst, blankLast, blank } = startsAcross(tile, repeat, 0);
        if (blankEdges(tile, 0) === null) return;
        const first = cropToRepeat(tile, repeat, { column: blankFirst, row: 0 });
        const last = cropToRepeat(tile, repeat, { column: blankLast, row: 0 });
        if (blank === 0) return;
        expect(blankEdges(first, 0)).toMatchObject({ left: blank, right: 0 });
        expect(blankEdges(last, 0)).toMatchObject({ left: 0, right: blank });
      }),
    );
  });
});

describe('trimming blank edges', () => {
  it('leaves the figure alone', () => {
    const drawing = gridFromText(['.....', '..#..', '.##..', '.....', '.....'], '.#');
    expect(gridToText(trimBlank(drawing, 0), '.#')).toEqual(['.#', '##']);
  });

  it('leaves no blank edge, and nothing to trim twice', () => {
    fc.assert(
      fc.property(tiles, (tile) => {
        const trimmed = trimBlank(tile, 0);
        if (blankEdges(tile, 0) !== null)
          expect(blankEdges(trimmed, 0)).toEqual({ left: 0, right: 0, top: 0, bottom: 0 });
        expect(sameGrid(trimBlank(trimmed, 0), trimmed)).toBe(true);
      }),
    );
  });
});
