/** The palette of what was read, in the order that pictures of motifs have theirs. */
import { cellAt, type Grid } from '../grid/index.ts';
import { groundOf } from '../picture/index.ts';

/**
 * The same cells with the palette put in order: the ground first, as a picture
 * with one pixel a cell is judged, then the colours of the figure as knitting
 * meets them, and those that no cell has last.
 */
export function groundFirst(grid: Grid, colours: readonly string[]): { grid: Grid; colours: readonly string[] } {
  const { width, height } = grid;
  const values = colours.map((colour) => Number.parseInt(colour.slice(1), 16));
  const pixels = new Uint32Array(width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      // Pictures are stored from the top.
      pixels[(height - 1 - row) * width + column] = values[cellAt(grid, column, row)] as number;
    }
  }
  const ground = values.indexOf(groundOf({ width, height, colours: pixels }));
  const order = [...new Set([ground, ...grid.cells, ...colours.keys()])];
  const place = new Map(order.map((index, to) => [index, to]));
  return {
    grid: { width, height, cells: grid.cells.map((index) => place.get(index) as number) },
    colours: order.map((index) => colours[index] as string),
  };
}
