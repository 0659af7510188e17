/**
 * A chart shown on a screen: in whole pixels of the screen, each of which
 * shines in three upright stripes of red, green and blue with dark between
 * them. A camera sees the stripes through its lens, which leaves no more of
 * them than a wave; its own raster makes bands and coloured fringes of that
 * wave, wider than either raster (moiré).
 */
import type { Rgb } from './drawn-chart.ts';
import type { Chances } from './random.ts';

export interface Screen {
  /** Width and height of one of its pixels, in widths of a cell of the chart. */
  readonly pixel: number;
  /** How strongly the stripes and the rows of pixels are still seen, 0 … 1. */
  readonly stripes: number;
  readonly rows: number;
}

export function screenOf(chances: Chances): Screen {
  return {
    pixel: 1 / chances.between(10, 26),
    stripes: chances.between(0.12, 0.4),
    rows: chances.between(0.05, 0.25),
  };
}

/** What is seen of a painted sheet that is shown on the screen, at places in cells. */
export function onScreen(paint: (x: number, y: number) => Rgb, { pixel, stripes, rows }: Screen): typeof paint {
  return (x, y) => {
    const [across, down] = [x / pixel, y / pixel];
    const shown = paint((Math.floor(across) + 0.5) * pixel, (Math.floor(down) + 0.5) * pixel);
    const row = 1 + rows * Math.cos(2 * Math.PI * (down - 0.5));
    const shining = (channel: 0 | 1 | 2): number =>
      shown[channel] * row * (1 + stripes * Math.cos(2 * Math.PI * (across - (channel + 0.5) / 3)));
    return [shining(0), shining(1), shining(2)];
  };
}
