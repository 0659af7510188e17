/**
 * Photos of charts that never existed, for tests and benches: a chart is
 * painted from its cells, a pinhole camera looks at it from somewhere, and the
 * lens, the lamp, the sensor and the JPEG each take their toll. The camera is
 * that of the photographs by seed, written from its geometry, not from the code
 * that reads the photos back.
 */
import type { Grid } from '@shared/grid/index.ts';
import type { Corners, Picture } from '@shared/reading/index.ts';
import { viewOf, type Pose } from '../../generate/charts/camera.ts';
import type { Rgb } from '../../generate/charts/drawn-chart.ts';
import { blurred, cornersSeen, exposed, grained, throughJpeg } from '../../generate/charts/sensor.ts';

/** How a cell of the figure is marked. */
export type Mark = 'filled' | 'cross' | 'dot' | 'slash' | 'hole';

export interface ChartStyle {
  /** sRGB by palette index; index 0 is the paper. */
  readonly colours: readonly Rgb[];
  /** Height of a cell for a width of 1. */
  readonly cellHeight?: number;
  /** Width of the lines in cells, 0 for none. */
  readonly line?: number;
  readonly lineColour?: Rgb;
  /** Every so many lines one is twice as thick. */
  readonly thickEvery?: number;
  /** Share of each line that is missing. */
  readonly broken?: number;
  readonly mark?: Mark;
  /** What lies around the chart and, for holes, behind it. */
  readonly surround?: Rgb;
}

/** It looks from three times the chart's larger side, at flat paper. */
export type Camera = Pick<Pose, 'width' | 'height' | 'roll' | 'tilt' | 'pan'> & Partial<Pick<Pose, 'fill' | 'barrel'>>;

export interface Wear {
  /** Standard deviation of the blur in pixels. */
  readonly blur?: number;
  /** Standard deviation of the noise in sRGB steps. */
  readonly noise?: number;
  /** Brightness at a place of the picture, each coordinate 0 … 1. */
  readonly light?: (x: number, y: number) => number;
  /** JPEG quality; left out, no JPEG. */
  readonly quality?: number;
  readonly seed?: number;
}

export interface ChartPhoto {
  readonly picture: Picture;
  readonly corners: Corners;
}

/** A uniform generator for tests (Park and Miller 1988, multiplier 48271). */
export function seeded(seed: number): () => number {
  let state = (seed * 7919 + 12345) % 2147483647 || 1;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/** Two steps of the generator make one number of the normal distribution (Box and Muller 1958). */
export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(random() || 1e-12)) * Math.cos(2 * Math.PI * random());
}

/** The chart as the camera sees it, and where its corners are in the picture. */
export function photograph(grid: Grid, style: ChartStyle, camera: Camera, wear: Wear = {}): ChartPhoto {
  const { cellHeight = 1 } = style;
  const chart = { width: grid.width, height: grid.height * cellHeight };
  const { fill = 0.9, barrel = 0, ...stands } = camera;
  const view = viewOf({ ...stands, fill, barrel, curl: 0, distance: 3 }, chart.width, chart.height, 0);
  const paint = chartPainter(grid, style);
  const values = exposed(camera, view, (x, y) => paint(x, y / cellHeight));
  return { picture: worn(values, camera, wear), corners: cornersSeen(view, chart) };
}

/** Corners as a hand sets them: each off by up to `pixels` in both directions. */
export function nudged(corners: Corners, pixels: number, random: () => number): Corners {
  return corners.map(({ x, y }) => ({
    x: x + (2 * random() - 1) * pixels,
    y: y + (2 * random() - 1) * pixels,
  })) as unknown as Corners;
}

/** Colour of the sheet at a place given in cells from the chart's top left corner. */
function chartPainter(grid: Grid, style: ChartStyle): (x: number, y: number) => Rgb {
  const { colours, line = 0, lineColour = [90, 90, 90], thickEvery = 0, broken = 0, mark = 'filled' } = style;
  const surround = style.surround ?? (colours[0] as Rgb);
  const { width, height } = grid;
  const onLine = (place: number, along: number): boolean => {
    const nearest = Math.round(place);
    const half = (thickEvery > 0 && nearest % thickEvery === 0 ? line : line / 2) || 0;
    if (Math.abs(place - nearest) >= half) return false;
    // Gaps of a third of a cell, in a different place on every line.
    return broken === 0 || hash(nearest, Math.floor(along * 3)) >= broken;
  };
  return (x, y) => {
    const edge = line;
    if (x < -edge || y < -edge || x > width + edge || y > height + edge) return surround;
    if (line > 0 && (onLine(x, y) || onLine(y, x + 1000))) return lineColour;
    const column = Math.floor(x);
    const row = height - 1 - Math.floor(y);
    if (column < 0 || row < 0 || column >= width || row >= height) return colours[0] as Rgb;
    const index = grid.cells[row * width + column] as number;
    if (index === 0) return colours[0] as Rgb;
    return isMarked(mark, x - column - 0.5, y - Math.floor(y) - 0.5)
      ? mark === 'hole'
        ? surround
        : (colours[index] as Rgb)
      : (colours[0] as Rgb);
  };
}

function isMarked(mark: Mark, x: number, y: number): boolean {
  switch (mark) {
    case 'filled':
      return true;
    case 'cross':
      return Math.abs(Math.abs(x) - Math.abs(y)) < 0.12 && Math.abs(x) < 0.4;
    case 'slash':
      return Math.abs(x + y) < 0.14 && Math.abs(x) < 0.42;
    case 'dot':
      return Math.hypot(x, y) < 0.28;
    case 'hole':
      return Math.hypot(x, y) < 0.37;
  }
}

function hash(a: number, b: number): number {
  return seeded(Math.abs(a * 131 + b * 7 + 1))();
}

/** Lamp, lens, sensor and JPEG, in the order in which light meets them. */
function worn(values: Float32Array, size: Pick<Camera, 'width' | 'height'>, wear: Wear): Picture {
  const { width, height } = size;
  const { blur = 0, noise = 0, light, quality, seed = 1 } = wear;
  if (light) {
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const bright = light((x + 0.5) / width, (y + 0.5) / height);
        for (let c = 0; c < 3; c++) {
          const at = (y * width + x) * 3 + c;
          values[at] = (values[at] as number) * bright;
        }
      }
    }
  }
  const random = seeded(seed);
  const grain = noise > 0 ? () => noise * normal(random) : () => 0;
  const picture = grained(blur > 0 ? blurred(values, size, blur) : values, size, grain);
  return quality === undefined ? picture : throughJpeg(picture, quality);
}
