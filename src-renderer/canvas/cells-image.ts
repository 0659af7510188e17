/**
 * Cells as an image that stands in a page like any other.
 *
 * A canvas is a layer of its own in Chromium, and so is all that stands over
 * it: a list of 200 small canvases made every frame of the drawing beside it
 * dearer by two milliseconds.
 */
import type { Grid } from '@shared/grid/index.ts';

/** Samples along a side; an image of more cells leaves some out, so a stroke on a large one costs no more. */
const MOST_SAMPLES = 96;

const FILE_HEADER = 14;
const INFO_HEADER = 40;

/**
 * The address of an image of one pixel a cell (the lowest row at the bottom),
 * for `src`. A BMP of 8 bits a pixel (Microsoft's description of bitmap
 * storage), since that is what a grid is: rows from the bottom, and for each
 * cell the place of its colour in a palette.
 *
 * `colours`: `#rrggbb` by palette index. A cell whose index has none is black.
 */
export function cellsImage(grid: Grid, colours: readonly string[]): string {
  const width = Math.min(grid.width, MOST_SAMPLES);
  const height = Math.min(grid.height, MOST_SAMPLES);
  // Rows are filled up to whole words of four bytes.
  const stride = Math.ceil(width / 4) * 4;
  const pixels = FILE_HEADER + INFO_HEADER + 4 * 256;
  const bytes = new Uint8Array(pixels + stride * height);
  const view = new DataView(bytes.buffer);
  bytes.set([0x42, 0x4d]);
  view.setUint32(2, bytes.length, true);
  view.setUint32(10, pixels, true);
  view.setUint32(14, INFO_HEADER, true);
  view.setInt32(18, width, true);
  view.setInt32(22, height, true);
  view.setUint16(26, 1, true);
  view.setUint16(28, 8, true);
  colours.forEach((colour, index) =>
    // Blue first, then a byte that is reserved.
    view.setUint32(FILE_HEADER + INFO_HEADER + 4 * index, Number.parseInt(colour.slice(1), 16), true),
  );
  for (let y = 0; y < height; y++) {
    const row = Math.floor(((y + 0.5) * grid.height) / height) * grid.width;
    for (let x = 0; x < width; x++) {
      bytes[pixels + y * stride + x] = grid.cells[row + Math.floor(((x + 0.5) * grid.width) / width)] as number;
    }
  }
  return `data:image/bmp;base64,${btoa(String.fromCharCode(...bytes))}`;
}
