/** Holes of a card: small round places through which what lies below is seen. */
import type { Bounds } from './cell-sides.ts';
import type { LatticeModel } from './lattice-model.ts';
import type { Picture } from './picture.ts';

/** A hole by its middle, in columns and rows of a lattice: that of the first cell is at 0.5. */
export interface Hole {
  readonly column: number;
  readonly row: number;
}

/** Looks a cell. */
const LOOKS = 10;

/** Darker than this share of the card around it is no card. */
const DARK_BELOW = 0.82;

/** Nine tenths of all that is seen are darker than a lit card; what is darker than this share of it is no card, even in the shade. */
const BRIGHT = 0.9;
const LEAST_LIT = 0.3;

/** So many looks beside a hole the card is still as bright, but for the edge of a shadow. */
const ASIDE = [
  [8, 0],
  [-8, 0],
  [0, 8],
  [0, -8],
] as const;
const LEAST_BESIDE = 0.4;

/** From the middle of a hole the card around it is reached within so many looks. */
const REACH = 5;

/** A hole is at least and at most this large, in cells, and no longer than this. */
const LEAST_AREA = 0.06;
const MOST_AREA = 0.8;
const MOST_LENGTH = 1.05;

/** Specks are smaller than this share of most holes; feed holes are not. */
const LEAST_SHARE = 0.3;

/** The holes within a part of a lattice. */
export function holesIn(picture: Picture, model: LatticeModel, { left, top, right, bottom }: Bounds): Hole[] {
  const width = (right - left) * LOOKS;
  const height = (bottom - top) * LOOKS;
  const bright = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      bright[y * width + x] = brightAt(picture, model.at(left + (x + 0.5) / LOOKS, top + (y + 0.5) / LOOKS));
    }
  }
  const card = closed(bright, width);
  const lit = LEAST_LIT * (card.slice().sort()[Math.floor(BRIGHT * card.length)] as number);
  const dark = Uint8Array.from(bright, (value, i) => {
    const around = card[i] as number;
    return around > lit && value < DARK_BELOW * around ? 1 : 0;
  });
  const spots = spotsOf(dark, width, height);
  const areas = spots.map(({ area }) => area).sort((one, other) => one - other);
  const least = LEAST_SHARE * (areas[areas.length >> 1] ?? 0);
  return spots
    .filter(({ x, y, area }) => {
      const [column, row] = [Math.floor(x), Math.floor(y)];
      const here = card[row * width + column] as number;
      // The rim of the card is no hole: beyond it lies what is below.
      return (
        area >= least &&
        ASIDE.every(([dx, dy]) => {
          const [u, v] = [column + dx, row + dy];
          const isIn = u >= 0 && v >= 0 && u < width && v < height;
          return isIn && (card[v * width + u] as number) > LEAST_BESIDE * here;
        })
      );
    })
    .map(({ x, y }) => ({ column: left + x / LOOKS, row: top + y / LOOKS }));
}

/** Nothing beyond the photo. */
function brightAt({ width, height, rgba }: Picture, { x, y }: { readonly x: number; readonly y: number }): number {
  const [column, row] = [Math.floor(x), Math.floor(y)];
  if (!(column >= 0 && row >= 0 && column < width && row < height)) return 0;
  const at = (row * width + column) * 4;
  return (rgba[at] as number) + (rgba[at + 1] as number) + (rgba[at + 2] as number);
}

/**
 * The card without its holes: what is darker than all around it within a hole's
 * reach is filled, while the edge of a shadow stays where it is (a closing, as
 * mathematical morphology has it: Serra 1982).
 */
function closed(bright: Float32Array, width: number): Float32Array {
  return extreme(extreme(bright, width, true), width, false);
}

/** The highest or the lowest value within {@link REACH} either way, along rows and then along columns. */
function extreme(values: Float32Array, width: number, isHighest: boolean): Float32Array {
  const rows = extremeAlong(values, width, 1, isHighest);
  return extremeAlong(rows, values.length, width, isHighest);
}

/** Along lines of so many values that follow one another, or lie `step` apart side by side; a call for each of millions would take seconds. */
function extremeAlong(from: Float32Array, length: number, step: number, isHighest: boolean): Float32Array {
  const found = from.slice();
  for (let off = -REACH; off <= REACH; off++) {
    const shift = off * step;
    for (let start = 0; start < from.length; start += length) {
      const end = start + length - Math.max(0, shift);
      for (let i = start + Math.max(0, -shift); i < end; i++) {
        const there = from[i + shift] as number;
        if (isHighest ? there > (found[i] as number) : there < (found[i] as number)) found[i] = there;
      }
    }
  }
  return found;
}

/** What hangs together, in looks: its middle and how much it is. */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly area: number;
}

/** Those that are as large as a hole. */
function spotsOf(dark: Uint8Array, width: number, height: number): Spot[] {
  const spots: Spot[] = [];
  const taken = new Uint8Array(dark.length);
  for (let first = 0; first < dark.length; first++) {
    if (dark[first] === 0 || taken[first] === 1) continue;
    let [area, sumX, sumY, left, right, top, bottom] = [0, 0, 0, Infinity, -Infinity, Infinity, -Infinity];
    const rim = [first];
    taken[first] = 1;
    for (let i = rim.pop(); i !== undefined; i = rim.pop()) {
      const [x, y] = [i % width, Math.floor(i / width)];
      area++;
      sumX += x + 0.5;
      sumY += y + 0.5;
      [left, right, top, bottom] = [Math.min(left, x), Math.max(right, x), Math.min(top, y), Math.max(bottom, y)];
      for (const [next, isIn] of [
        [i - 1, x > 0],
        [i + 1, x < width - 1],
        [i - width, y > 0],
        [i + width, y < height - 1],
      ] as const) {
        if (!isIn || dark[next] === 0 || taken[next] === 1) continue;
        taken[next] = 1;
        rim.push(next);
      }
    }
    const cells = area / (LOOKS * LOOKS);
    const longest = Math.max(right - left, bottom - top) + 1;
    if (cells < LEAST_AREA || cells > MOST_AREA || longest > MOST_LENGTH * LOOKS) continue;
    spots.push({ x: sumX / area, y: sumY / area, area });
  }
  return spots;
}
