/**
 * Photos of charts that never existed, for tests and benches: a chart is
 * painted from its cells, a pinhole camera looks at it from somewhere, and the
 * lens, the lamp, the sensor and the JPEG each take their toll. Written from
 * the geometry of a camera, not from the code that reads the photos back.
 */
import { decode, encode } from 'jpeg-js';
import type { Grid } from '@shared/grid/index.ts';
import type { Corners, Picture, Point } from '@shared/reading/index.ts';

type Rgb = readonly [number, number, number];

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

export interface Camera {
  readonly width: number;
  readonly height: number;
  /** Degrees: turned in the picture, tipped back, swung sideways. */
  readonly roll: number;
  readonly tilt: number;
  readonly pan: number;
  /** Share of the picture's width or height that the chart about fills. */
  readonly fill?: number;
  /** How far the picture's edge bulges, as a share of its half diagonal. */
  readonly barrel?: number;
}

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
  const view = viewOf(camera, grid.width, grid.height * (style.cellHeight ?? 1));
  const colourAt = chartPainter(grid, style);
  const { width, height } = camera;
  const values = new Float32Array(width * height * 3);
  const place = new Float64Array(2);
  const cellHeight = style.cellHeight ?? 1;
  // Two by two looks a pixel: edges come out soft as on a sensor.
  const looks = [1 / 4, 3 / 4];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let red = 0;
      let green = 0;
      let blue = 0;
      for (const dy of looks) {
        for (const dx of looks) {
          view.toChart(x + dx, y + dy, place);
          const colour = colourAt(place[0] as number, (place[1] as number) / cellHeight);
          red += colour[0];
          green += colour[1];
          blue += colour[2];
        }
      }
      const at = (y * width + x) * 3;
      values[at] = red / 4;
      values[at + 1] = green / 4;
      values[at + 2] = blue / 4;
    }
  }
  const chartHeight = grid.height * cellHeight;
  const corners = [
    [0, 0],
    [grid.width, 0],
    [grid.width, chartHeight],
    [0, chartHeight],
  ].map(([x, y]) => view.toPicture(x as number, y as number)) as unknown as Corners;
  return { picture: worn(values, width, height, wear), corners };
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

interface View {
  toPicture(x: number, y: number): Point;
  /** Writes the place in the chart's plane into `place`. */
  toChart(x: number, y: number, place: Float64Array): void;
}

/**
 * A pinhole camera before the sheet. The sheet is turned about its middle
 * (roll, then tilt, then pan) and stands three times its larger side away;
 * the focal length is chosen so that it fills the picture.
 */
function viewOf(camera: Camera, chartWidth: number, chartHeight: number): View {
  const [roll, tilt, pan] = [camera.roll, camera.tilt, camera.pan].map((degrees) => (degrees * Math.PI) / 180) as [
    number,
    number,
    number,
  ];
  const distance = 3 * Math.max(chartWidth, chartHeight);
  // Columns of the turning: where the sheet's across and down directions point.
  const turn = (x: number, y: number): [number, number, number] => {
    const rx = x * Math.cos(roll) - y * Math.sin(roll);
    const ry = x * Math.sin(roll) + y * Math.cos(roll);
    const ty = ry * Math.cos(tilt);
    const tz = ry * Math.sin(tilt);
    return [rx * Math.cos(pan) + tz * Math.sin(pan), ty, -rx * Math.sin(pan) + tz * Math.cos(pan)];
  };
  const e1 = turn(1, 0);
  const e2 = turn(0, 1);
  const corner = [1, -1].flatMap((sx) => [1, -1].map((sy) => turn((sx * chartWidth) / 2, (sy * chartHeight) / 2)));
  const reach = (axis: 0 | 1): number => Math.max(...corner.map((p) => Math.abs(p[axis]) / (distance + p[2])));
  const fill = camera.fill ?? 0.9;
  const focal = Math.min((fill * camera.width) / 2 / reach(0), (fill * camera.height) / 2 / reach(1));
  const { width, height, barrel = 0 } = camera;
  const halfDiagonal = Math.hypot(width, height) / 2;
  // A pixel of the picture is pulled towards where an ideal lens would have put it.
  const stretchAt = (x: number, y: number): number =>
    1 + (barrel * ((x - width / 2) ** 2 + (y - height / 2) ** 2)) / halfDiagonal ** 2;
  const toChart = (x: number, y: number, place: Float64Array): void => {
    const stretch = stretchAt(x, y);
    const px = ((x - width / 2) * stretch) / focal;
    const py = ((y - height / 2) * stretch) / focal;
    // The ray (px, py, 1)·t meets middle + a·e1 + b·e2, by Cramer's rule.
    const a11 = e1[0] - px * e1[2];
    const a12 = e2[0] - px * e2[2];
    const a21 = e1[1] - py * e1[2];
    const a22 = e2[1] - py * e2[2];
    const determinant = a11 * a22 - a12 * a21;
    place[0] = (px * distance * a22 - py * distance * a12) / determinant + chartWidth / 2;
    place[1] = (a11 * py * distance - a21 * px * distance) / determinant + chartHeight / 2;
  };
  const toPicture = (x: number, y: number): Point => {
    const [px, py, pz] = turn(x - chartWidth / 2, y - chartHeight / 2);
    let at = { x: (focal * px) / (distance + pz) + width / 2, y: (focal * py) / (distance + pz) + height / 2 };
    // Undo the bulge by repeating; it shrinks the error a hundredfold each time.
    const wanted = { x: at.x - width / 2, y: at.y - height / 2 };
    for (let i = 0; i < 12; i++) {
      const stretch = stretchAt(at.x, at.y);
      at = { x: width / 2 + wanted.x / stretch, y: height / 2 + wanted.y / stretch };
    }
    return at;
  };
  return { toPicture, toChart };
}

/** Lamp, lens, sensor and JPEG, in the order in which light meets them. */
function worn(values: Float32Array, width: number, height: number, wear: Wear): Picture {
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
  const seen = blur > 0 ? blurred(values, width, height, blur) : values;
  const random = seeded(seed);
  const rgba = new Uint8ClampedArray(width * height * 4);
  for (let pixel = 0; pixel < width * height; pixel++) {
    for (let c = 0; c < 3; c++) {
      const grain = noise > 0 ? noise * normal(random) : 0;
      rgba[pixel * 4 + c] = (seen[pixel * 3 + c] as number) + grain;
    }
    rgba[pixel * 4 + 3] = 255;
  }
  if (quality === undefined) return { width, height, rgba };
  const file = encode({ width, height, data: rgba }, quality);
  return { width, height, rgba: decode(file.data, { useTArray: true }).data };
}

/** Gaussian blur, across and then down. */
export function blurred(values: Float32Array, width: number, height: number, deviation: number): Float32Array {
  const reach = Math.ceil(3 * deviation);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * deviation ** 2)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const pass = (from: Float32Array, step: number, length: number, lines: number, lineStep: number): Float32Array => {
    const to = new Float32Array(from.length);
    for (let line = 0; line < lines; line++) {
      for (let place = 0; place < length; place++) {
        for (let c = 0; c < 3; c++) {
          let sum = 0;
          for (let k = -reach; k <= reach; k++) {
            const near = Math.min(length - 1, Math.max(0, place + k));
            sum += (weights[k + reach] as number) * (from[line * lineStep + near * step + c] as number);
          }
          to[line * lineStep + place * step + c] = sum / total;
        }
      }
    }
    return to;
  };
  return pass(pass(values, 3, width, height, width * 3), width * 3, height, width, 3);
}
