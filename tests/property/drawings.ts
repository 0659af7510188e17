/** Random drawings to try laws on. */
import fc from 'fast-check';
import type { Grid } from '@shared/grid/index.ts';

interface DrawingLimits {
  readonly mostWidth: number;
  readonly mostHeight: number;
  /** Palette indices used, 0 … colours - 1. */
  readonly colours?: number;
}

/** A grid of any size up to the limits, cells at random. */
export function drawing({ mostWidth, mostHeight, colours = 3 }: DrawingLimits): fc.Arbitrary<Grid> {
  return fc
    .tuple(fc.integer({ min: 1, max: mostWidth }), fc.integer({ min: 1, max: mostHeight }))
    .chain(([width, height]) => cellsOf(width, height, colours));
}

/** A small tile repeated in both directions and cut off anywhere, now and then with one cell changed. */
export const tiledDrawing: fc.Arbitrary<Grid> = fc
  .record({
    tile: drawing({ mostWidth: 5, mostHeight: 5, colours: 2 }),
    width: fc.integer({ min: 1, max: 17 }),
    height: fc.integer({ min: 1, max: 17 }),
    slip: fc.option(fc.nat(), { freq: 3 }),
  })
  .map(({ tile, width, height, slip }) => {
    const cells = Uint8Array.from({ length: width * height }, (_, index) => {
      const row = Math.floor(index / width) % tile.height;
      return tile.cells[row * tile.width + ((index % width) % tile.width)] as number;
    });
    if (slip !== null) {
      const index = slip % cells.length;
      cells[index] = 1 - (cells[index] as number);
    }
    return { width, height, cells };
  });

function cellsOf(width: number, height: number, colours: number): fc.Arbitrary<Grid> {
  return fc
    .uint8Array({ minLength: width * height, maxLength: width * height, max: colours - 1 })
    .map((cells) => ({ width, height, cells: Uint8Array.from(cells) }));
}
