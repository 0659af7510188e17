/**
 * What is seen in each cell of a straightened chart.
 *
 * A cell shows its colour, and often more: the lines around it, a symbol, the
 * white that a pencil leaves, a speck, a neighbour that a felt pen carried
 * over. Where the pixels of its middle fall into two clearly different
 * colours, that of the larger part is the cell's (Ridler and Calvard 1978 for
 * the split: each half about its own mean); else it is their mean without the
 * lightest and darkest.
 */
import type { Drift } from './drift.ts';
import { luma } from './luma.ts';
import { nthOf } from './nth.ts';
import { LINEAR, oklabOfLinear } from './oklab.ts';
import type { Picture } from './picture.ts';
import type { Steps } from './steps.ts';
import { unevennessOf } from './strokes.ts';

/**
 * What was seen in each cell, in the order of a grid: the bottom row first.
 * Colours are sRGB values 0 … 255 with fractions, three a cell.
 */
export interface CellSamples {
  readonly columns: number;
  readonly rows: number;
  /** The colour of what most of the cell shows. */
  readonly colours: Float32Array;
  /** Mean of all pixels of the middle: a cross or a dot counts with its share of ink. */
  readonly means: Float32Array;
  /** Mean of all pixels within its lines: of a cell with a sign that fills its middle, what lies around the sign too. */
  readonly wholes: Float32Array;
  /** Mean of the pixels just within its lines, which few signs reach. */
  readonly rims: Float32Array;
  /** How light the lightest part of the middle is, 0 … 255, one number a cell: paper, where some shows between strokes. */
  readonly lightest: Float32Array;
  /** How uneven the middle is, as `unevennessOf` has it, one number a cell. */
  readonly unevenness: Float32Array;
  /** Means of the four quarters of the middle, twelve numbers a cell: top left, top right, bottom left, bottom right. */
  readonly quarters: Float32Array;
}

/** How far the middle of a cell reaches from its centre, in cells: for its quarters, for its colour, and for all within its lines. */
const REACH = 0.28;
const COLOUR_REACH = 0.34;
const WHOLE_REACH = 0.42;

/** The rim of a cell begins so many pixels within its lines, as a share of what lies within them. */
const RIM_SHARE = 0.15;

/** Share of the pixels left out at the dark and at the light end. */
const LEFT_OUT = 0.15;

/** Two parts of a cell are two colours if they lie this far apart (OKLab) … */
const LEAST_APART = 0.09;

/** … and so many times their own spread. */
const APART_TIMES = 2.6;

/** Rounds of the split; it stands still after fewer. */
const ROUNDS = 6;

/** So light is the lightest part that this share of the pixels is darker: specks of glare lie above. */
const LIGHTEST = 0.85;

const ROWS_A_STEP = 16;

export function* sampleCells(straight: Picture, columns: number, rows: number, drift: Drift): Steps<CellSamples> {
  const count = columns * rows;
  const samples: CellSamples = {
    columns,
    rows,
    colours: new Float32Array(count * 3),
    means: new Float32Array(count * 3),
    wholes: new Float32Array(count * 3),
    rims: new Float32Array(count * 3),
    lightest: new Float32Array(count),
    unevenness: new Float32Array(count),
    quarters: new Float32Array(count * 12),
  };
  const cellWidth = straight.width / columns;
  const cellHeight = straight.height / rows;
  const cell = new CellPixels(straight, cellWidth, cellHeight);
  for (let fromTop = 0; fromTop < rows; fromTop++) {
    for (let column = 0; column < columns; column++) {
      const x = (column + 0.5) / columns;
      const y = (fromTop + 0.5) / rows;
      const at = (rows - 1 - fromTop) * columns + column;
      const centreX = (column + 0.5 + drift.across(x, y)) * cellWidth;
      const centreY = (fromTop + 0.5 + drift.up(x, y)) * cellHeight;
      cell.look(centreX, centreY, REACH);
      cell.writeMeans(samples, at);
      cell.look(centreX, centreY, COLOUR_REACH);
      cell.writeColour(samples, at);
      cell.writeLightest(samples, at);
      cell.writeUnevenness(samples, at);
      cell.look(centreX, centreY, WHOLE_REACH);
      cell.writeWhole(samples, at);
    }
    if (fromTop % ROWS_A_STEP === 0) yield { stage: 'sample', done: fromTop / rows };
  }
  return samples;
}

/** Looks at one cell after another; grows its lists once and keeps them. */
class CellPixels {
  left = 0;
  right = 0;
  top = 0;
  bottom = 0;
  private labs = new Float64Array(0);
  private order: number[] = [];

  constructor(
    private readonly picture: Picture,
    private readonly cellWidth: number,
    private readonly cellHeight: number,
  ) {}

  look(x: number, y: number, reach: number): void {
    const { width, height } = this.picture;
    this.left = clamp(Math.round(x - reach * this.cellWidth), 0, width - 2);
    this.right = clamp(Math.round(x + reach * this.cellWidth), this.left + 2, width);
    this.top = clamp(Math.round(y - reach * this.cellHeight), 0, height - 2);
    this.bottom = clamp(Math.round(y + reach * this.cellHeight), this.top + 2, height);
  }

  writeMeans({ means, quarters }: CellSamples, cell: number): void {
    const { width, rgba } = this.picture;
    const middleX = (this.left + this.right) >> 1;
    const middleY = (this.top + this.bottom) >> 1;
    const sums = new Float64Array(12);
    const counts = new Float64Array(4);
    for (let py = this.top; py < this.bottom; py++) {
      for (let px = this.left; px < this.right; px++) {
        const at = (py * width + px) * 4;
        const quarter = (py < middleY ? 0 : 2) + (px < middleX ? 0 : 1);
        for (let channel = 0; channel < 3; channel++) {
          const sum = quarter * 3 + channel;
          sums[sum] = (sums[sum] as number) + (rgba[at + channel] as number);
        }
        counts[quarter] = (counts[quarter] as number) + 1;
      }
    }
    const total = counts.reduce((sum, count) => sum + count, 0);
    for (let channel = 0; channel < 3; channel++) {
      let sum = 0;
      for (let quarter = 0; quarter < 4; quarter++) {
        const part = sums[quarter * 3 + channel] as number;
        sum += part;
        quarters[cell * 12 + quarter * 3 + channel] = part / (counts[quarter] as number);
      }
      means[cell * 3 + channel] = sum / total;
    }
  }

  writeWhole({ wholes, rims }: CellSamples, cell: number): void {
    const { width, rgba } = this.picture;
    const { left, right, top, bottom } = this;
    const rim = Math.max(1, Math.round(RIM_SHARE * Math.min(right - left, bottom - top)));
    const [within, onRim] = [
      [0, 0, 0],
      [0, 0, 0],
    ];
    for (let py = top; py < bottom; py++) {
      const isAtEnd = py < top + rim || py >= bottom - rim;
      for (let px = left; px < right; px++) {
        const at = (py * width + px) * 4;
        const sum = isAtEnd || px < left + rim || px >= right - rim ? onRim : within;
        for (let channel = 0; channel < 3; channel++)
          sum[channel] = (sum[channel] as number) + (rgba[at + channel] as number);
      }
    }
    const pixels = (right - left) * (bottom - top);
    const inside = Math.max(0, right - left - 2 * rim) * Math.max(0, bottom - top - 2 * rim);
    for (let channel = 0; channel < 3; channel++) {
      const there = onRim[channel] as number;
      wholes[cell * 3 + channel] = ((within[channel] as number) + there) / pixels;
      rims[cell * 3 + channel] = there / (pixels - inside);
    }
  }

  /** The mean of the larger part where there are two; else of all but the lightest and darkest. */
  writeColour({ colours }: CellSamples, cell: number): void {
    const count = this.takeLabs();
    const stray = this.smallerPart(count);
    if (stray) {
      this.writeMean(colours, cell, count, (i) => stray[i] === 0);
      return;
    }
    const leftOut = Math.floor(count * LEFT_OUT);
    this.order.length = count;
    for (let i = 0; i < count; i++) this.order[i] = this.labs[i * 3] as number;
    const darkest = nthOf(this.order, leftOut) as number;
    const lightest = nthOf(this.order, count - 1 - leftOut) as number;
    this.writeMean(colours, cell, count, (i) => {
      const lightness = this.labs[i * 3] as number;
      return lightness >= darkest && lightness <= lightest;
    });
  }

  writeLightest({ lightest }: CellSamples, cell: number): void {
    const { width, rgba } = this.picture;
    this.order.length = 0;
    for (let py = this.top; py < this.bottom; py++) {
      for (let px = this.left; px < this.right; px++) this.order.push(luma(rgba, (py * width + px) * 4));
    }
    lightest[cell] = nthOf(this.order, Math.floor(this.order.length * LIGHTEST)) as number;
  }

  writeUnevenness({ unevenness }: CellSamples, cell: number): void {
    unevenness[cell] = unevennessOf(this.picture.rgba, this.picture.width, this);
  }

  private takeLabs(): number {
    const { width, rgba } = this.picture;
    const count = (this.right - this.left) * (this.bottom - this.top);
    if (this.labs.length < count * 3) this.labs = new Float64Array(count * 3);
    let i = 0;
    for (let py = this.top; py < this.bottom; py++) {
      for (let px = this.left; px < this.right; px++) {
        const at = (py * width + px) * 4;
        const [l, a, b] = oklabOfLinear(
          LINEAR[rgba[at] as number] as number,
          LINEAR[rgba[at + 1] as number] as number,
          LINEAR[rgba[at + 2] as number] as number,
        );
        this.labs[i++] = l;
        this.labs[i++] = a;
        this.labs[i++] = b;
      }
    }
    return count;
  }

  /** 1 for each pixel of the smaller of two parts, or null where the pixels are of one colour. */
  private smallerPart(count: number): Uint8Array | null {
    const { labs } = this;
    const mean = [0, 0, 0];
    for (let i = 0; i < count * 3; i++) mean[i % 3] = (mean[i % 3] as number) + (labs[i] as number) / count;
    const axis = this.widestAxis(count, mean);
    const part = new Uint8Array(count);
    const at = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      let along = 0;
      for (let k = 0; k < 3; k++) along += ((labs[i * 3 + k] as number) - (mean[k] as number)) * (axis[k] as number);
      at[i] = along;
    }
    let border = 0;
    let [low, high, inHigh] = [0, 0, 0];
    for (let round = 0; round < ROUNDS; round++) {
      [low, high, inHigh] = [0, 0, 0];
      for (let i = 0; i < count; i++) {
        const along = at[i] as number;
        if (along > border) {
          high += along;
          inHigh++;
        } else low += along;
      }
      if (inHigh === 0 || inHigh === count) return null;
      high /= inHigh;
      low /= count - inHigh;
      border = (high + low) / 2;
    }
    let within = 0;
    for (let i = 0; i < count; i++) {
      const along = at[i] as number;
      part[i] = along > border ? 1 : 0;
      within += (along - (along > border ? high : low)) ** 2;
    }
    const apart = high - low;
    if (apart < Math.max(LEAST_APART, APART_TIMES * Math.sqrt(within / count))) return null;
    return inHigh * 2 <= count ? part : part.map((isHigh) => 1 - isHigh);
  }

  /** The direction in which the pixels differ most (power iteration on their covariance). */
  private widestAxis(count: number, mean: readonly number[]): number[] {
    const spread = new Float64Array(9);
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < 3; j++) {
        for (let k = 0; k < 3; k++) {
          const product =
            ((this.labs[i * 3 + j] as number) - (mean[j] as number)) *
            ((this.labs[i * 3 + k] as number) - (mean[k] as number));
          spread[j * 3 + k] = (spread[j * 3 + k] as number) + product;
        }
      }
    }
    let axis = [1, 0.1, 0.1];
    for (let round = 0; round < 8; round++) {
      const next = [0, 1, 2].map((j) => axis.reduce((sum, value, k) => sum + value * (spread[j * 3 + k] as number), 0));
      const length = Math.hypot(...next);
      if (length === 0) return [1, 0, 0];
      axis = next.map((value) => value / length);
    }
    return axis;
  }

  private writeMean(colours: Float32Array, cell: number, count: number, isIn: (i: number) => boolean): void {
    const { width, rgba } = this.picture;
    const across = this.right - this.left;
    const sum = [0, 0, 0];
    let taken = 0;
    for (let i = 0; i < count; i++) {
      if (!isIn(i)) continue;
      const at = ((this.top + Math.floor(i / across)) * width + this.left + (i % across)) * 4;
      for (let channel = 0; channel < 3; channel++)
        sum[channel] = (sum[channel] as number) + (rgba[at + channel] as number);
      taken++;
    }
    for (let channel = 0; channel < 3; channel++) colours[cell * 3 + channel] = (sum[channel] as number) / taken;
  }
}

/** By how much the logarithm of light rises inside each cell, to the right and upwards: two numbers a cell, for a cell's width. */
export function slopesInside({ columns, rows, quarters }: CellSamples): Float64Array {
  const slopes = new Float64Array(columns * rows * 2);
  for (let cell = 0; cell < columns * rows; cell++) {
    const [a, b, c, d] = [0, 1, 2, 3].map((quarter) => Math.log(Math.max(4, luma(quarters, cell * 12 + quarter * 3))));
    const [topLeft, topRight, bottomLeft, bottomRight] = [a, b, c, d] as [number, number, number, number];
    // The middles of two quarters lie as far apart as a quarter is wide.
    slopes[cell * 2] = (topRight + bottomRight - topLeft - bottomLeft) / 2 / REACH;
    slopes[cell * 2 + 1] = (topLeft + topRight - bottomLeft - bottomRight) / 2 / REACH;
  }
  return slopes;
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}
