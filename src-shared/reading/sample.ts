/** The colour of each cell of a straightened chart, taken away from its lines. */
import type { Drift } from './drift.ts';
import type { Picture } from './picture.ts';
import type { Steps } from './steps.ts';

/**
 * What was seen in each cell, in the order of a grid: the bottom row first.
 * Colours are sRGB values 0 … 255 with fractions, three a cell.
 */
export interface CellSamples {
  readonly columns: number;
  readonly rows: number;
  /** Mean of the middle of the cell without its lightest and darkest pixels: dust and stray lines do not count. */
  readonly colours: Float32Array;
  /** Mean of all pixels of the middle: a cross or a dot counts with its share of ink. */
  readonly means: Float32Array;
  /** Means of the four quarters of the middle, twelve numbers a cell: top left, top right, bottom left, bottom right. */
  readonly quarters: Float32Array;
}

/** How far the middle of a cell reaches from its centre, in cells. */
const REACH = 0.28;

/** Share of the pixels left out at the dark and at the light end. */
const LEFT_OUT = 0.15;

const ROWS_A_STEP = 16;

export function* sampleCells(straight: Picture, columns: number, rows: number, drift: Drift): Steps<CellSamples> {
  const count = columns * rows;
  const samples: CellSamples = {
    columns,
    rows,
    colours: new Float32Array(count * 3),
    means: new Float32Array(count * 3),
    quarters: new Float32Array(count * 12),
  };
  const cellWidth = straight.width / columns;
  const cellHeight = straight.height / rows;
  const middle = new Middle(straight);
  for (let fromTop = 0; fromTop < rows; fromTop++) {
    for (let column = 0; column < columns; column++) {
      const x = (column + 0.5) / columns;
      const y = (fromTop + 0.5) / rows;
      const centreX = (column + 0.5 + drift.across(x, y)) * cellWidth;
      const centreY = (fromTop + 0.5 + drift.up(x, y)) * cellHeight;
      middle.look(centreX, centreY, REACH * cellWidth, REACH * cellHeight);
      middle.write(samples, (rows - 1 - fromTop) * columns + column);
    }
    if (fromTop % ROWS_A_STEP === 0) yield { stage: 'sample', done: fromTop / rows };
  }
  return samples;
}

/** Looks at the middle of one cell after another without allocating. */
class Middle {
  private readonly lightness = new Uint32Array(256);
  private readonly pixels: number[] = [];
  private readonly sums = new Float64Array(12);
  private readonly counts = new Float64Array(4);

  constructor(private readonly picture: Picture) {}

  look(x: number, y: number, reachX: number, reachY: number): void {
    const { width, height, rgba } = this.picture;
    const left = clamp(Math.round(x - reachX), 0, width - 2);
    const right = clamp(Math.round(x + reachX), left + 2, width);
    const top = clamp(Math.round(y - reachY), 0, height - 2);
    const bottom = clamp(Math.round(y + reachY), top + 2, height);
    const middleX = (left + right) >> 1;
    const middleY = (top + bottom) >> 1;
    this.sums.fill(0);
    this.counts.fill(0);
    this.lightness.fill(0);
    this.pixels.length = 0;
    for (let py = top; py < bottom; py++) {
      for (let px = left; px < right; px++) {
        const at = (py * width + px) * 4;
        const quarter = (py < middleY ? 0 : 2) + (px < middleX ? 0 : 1);
        for (let channel = 0; channel < 3; channel++) {
          const sum = quarter * 3 + channel;
          this.sums[sum] = (this.sums[sum] as number) + (rgba[at + channel] as number);
        }
        this.counts[quarter] = (this.counts[quarter] as number) + 1;
        const lightness = lightnessAt(rgba, at);
        this.lightness[lightness] = (this.lightness[lightness] as number) + 1;
        this.pixels.push(at);
      }
    }
  }

  write({ colours, means, quarters }: CellSamples, cell: number): void {
    for (let channel = 0; channel < 3; channel++) {
      let sum = 0;
      for (let quarter = 0; quarter < 4; quarter++) {
        const part = this.sums[quarter * 3 + channel] as number;
        sum += part;
        quarters[cell * 12 + quarter * 3 + channel] = part / (this.counts[quarter] as number);
      }
      means[cell * 3 + channel] = sum / this.pixels.length;
    }
    this.writeTrimmed(colours, cell);
  }

  private writeTrimmed(colours: Float32Array, cell: number): void {
    const { rgba } = this.picture;
    const leftOut = Math.floor(this.pixels.length * LEFT_OUT);
    const darkest = this.valueBelow(leftOut);
    const lightest = this.valueBelow(this.pixels.length - 1 - leftOut);
    let count = 0;
    const sum = [0, 0, 0] as [number, number, number];
    for (const at of this.pixels) {
      const lightness = lightnessAt(rgba, at);
      if (lightness < darkest || lightness > lightest) continue;
      count++;
      for (let channel = 0; channel < 3; channel++)
        sum[channel] = (sum[channel] as number) + (rgba[at + channel] as number);
    }
    for (let channel = 0; channel < 3; channel++) colours[cell * 3 + channel] = (sum[channel] as number) / count;
  }

  /** The lightness that `rank` pixels lie below or at, counted from the darkest. */
  private valueBelow(rank: number): number {
    let below = 0;
    for (let value = 0; value < 256; value++) {
      below += this.lightness[value] as number;
      if (below > rank) return value;
    }
    return 255;
  }
}

/** Enough of a lightness to order pixels: weights of ITU-R BT.601 in 256ths. */
function lightnessAt(rgba: Picture['rgba'], at: number): number {
  return ((rgba[at] as number) * 77 + (rgba[at + 1] as number) * 150 + (rgba[at + 2] as number) * 29) >> 8;
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}
