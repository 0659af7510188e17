/** Two maps of a picture in which what comes back evenly shows: its edges, and what is darker than what lies around it. */
import type { Picture } from './picture.ts';

/** Differences from the usual one up to this many times as much, as a share. */
const CEILING = 4;
const LEAST_CEILING = 24;

/** How much the colour changes at each pixel, 0 … 1. */
export function edgesOf({ width, height, rgba }: Picture): Float32Array {
  const edges = new Float32Array(width * height);
  const counts = new Uint32Array(1531);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const at = (y * width + x) * 4;
      const [up, down] = [at - width * 4, at + width * 4];
      let change = 0;
      for (let c = 0; c < 3; c++) {
        change += Math.abs((rgba[at + 4 + c] as number) - (rgba[at - 4 + c] as number));
        change += Math.abs((rgba[down + c] as number) - (rgba[up + c] as number));
      }
      edges[y * width + x] = change;
      counts[change] = (counts[change] as number) + 1;
    }
  }
  const inner = (width - 2) * (height - 2);
  let median = 0;
  for (let below = 0; median < counts.length && below * 2 < inner; median++) below += counts[median] as number;
  const ceiling = Math.max(LEAST_CEILING, CEILING * median);
  return edges.map((change) => Math.min(1, change / ceiling));
}

/** Around each pixel so far, in pixels, its own brightness is held against the mean. */
const AROUND = 12;

/** By how much each pixel is darker than what lies around it, −1 … 1: a hole's rim alone makes no wave as long as a cell. */
export function darknessOf({ width, height, rgba }: Picture): Float32Array {
  const sums = new Float64Array((width + 1) * (height + 1));
  const bright = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    let row = 0;
    for (let x = 0; x < width; x++) {
      const at = (y * width + x) * 4;
      const value = (rgba[at] as number) + (rgba[at + 1] as number) + (rgba[at + 2] as number);
      bright[y * width + x] = value;
      row += value;
      sums[(y + 1) * (width + 1) + x + 1] = (sums[y * (width + 1) + x + 1] as number) + row;
    }
  }
  return bright.map((value, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    const [left, right] = [Math.max(0, x - AROUND), Math.min(width, x + AROUND + 1)];
    const [upper, lower] = [Math.max(0, y - AROUND) * (width + 1), Math.min(height, y + AROUND + 1) * (width + 1)];
    const sum =
      (sums[lower + right] as number) -
      (sums[lower + left] as number) -
      (sums[upper + right] as number) +
      (sums[upper + left] as number);
    const area = ((right - left) * (lower - upper)) / (width + 1);
    return Math.max(-1, Math.min(1, (sum / area - value) / DARKNESS));
  });
}

/** Darker than its surroundings by this much, of three times 256, a pixel is fully dark. */
const DARKNESS = 120;
