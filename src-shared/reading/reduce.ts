/** A picture brought down to one colour for each stitch. */
import { LINEAR } from './oklab.ts';
import type { Picture } from './picture.ts';
import type { Steps } from './steps.ts';

/** A part of a picture in whole pixels from its top left corner. */
export interface Crop {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * `mean`: all that falls into a cell, mixed, as from far away. `edges`: the
 * colour that has most of the cell, so that a line stays a line and an edge
 * lies between two cells and not in a third colour.
 */
export type Reduction = 'mean' | 'edges';

/** Linear light, three numbers a cell, the bottom row first. */
export type CellLight = Float32Array;

/** Looks into a cell, across and up, to find the colour that has most of it. */
const LOOKS = 5;

/** Colours as near as this (linear light, one channel) speak for each other. */
const ALIKE = 0.12;

const ROWS_A_STEP = 8;

/** The light of `columns` × `rows` cells laid over the part of an opaque picture. */
export function* reduceTo(
  picture: Picture,
  crop: Crop,
  columns: number,
  rows: number,
  reduction: Reduction,
): Steps<CellLight> {
  const light = new Float32Array(columns * rows * 3);
  for (let fromTop = 0; fromTop < rows; fromTop++) {
    for (let column = 0; column < columns; column++) {
      const box = {
        left: crop.left + (column * crop.width) / columns,
        top: crop.top + (fromTop * crop.height) / rows,
        width: crop.width / columns,
        height: crop.height / rows,
      };
      light.set(
        reduction === 'mean' ? meanOf(picture, box) : mostOf(picture, box),
        ((rows - 1 - fromTop) * columns + column) * 3,
      );
    }
    if (fromTop % ROWS_A_STEP === 0) yield { stage: 'reduce', done: fromTop / rows };
  }
  return light;
}

type Light = [red: number, green: number, blue: number];

/** Mean light of a box; pixels that it cuts count with the share that lies inside. */
function meanOf({ width, height, rgba }: Picture, box: Crop): Light {
  const sum: Light = [0, 0, 0];
  let total = 0;
  const right = Math.min(width, box.left + box.width);
  const bottom = Math.min(height, box.top + box.height);
  for (let y = Math.floor(box.top); y < bottom; y++) {
    const tall = Math.min(y + 1, bottom) - Math.max(y, box.top);
    for (let x = Math.floor(box.left); x < right; x++) {
      const share = tall * (Math.min(x + 1, right) - Math.max(x, box.left));
      const at = (y * width + x) * 4;
      sum[0] += share * (LINEAR[rgba[at] as number] as number);
      sum[1] += share * (LINEAR[rgba[at + 1] as number] as number);
      sum[2] += share * (LINEAR[rgba[at + 2] as number] as number);
      total += share;
    }
  }
  return [sum[0] / total, sum[1] / total, sum[2] / total];
}

/**
 * The colour that most of a box has: of the means of its parts the one that
 * most others are like, mixed with those. Where two have half each, the parts
 * nearer to the middle decide.
 */
function mostOf(picture: Picture, box: Crop): Light {
  const parts: { light: Light; weight: number }[] = [];
  for (let v = 0; v < LOOKS; v++) {
    for (let u = 0; u < LOOKS; u++) {
      const light = meanOf(picture, {
        left: box.left + (u * box.width) / LOOKS,
        top: box.top + (v * box.height) / LOOKS,
        width: box.width / LOOKS,
        height: box.height / LOOKS,
      });
      const off = Math.hypot(u - (LOOKS - 1) / 2, v - (LOOKS - 1) / 2) / LOOKS;
      parts.push({ light, weight: 1 - off / 2 });
    }
  }
  let best = parts[0] as { light: Light };
  let most = 0;
  for (const part of parts) {
    const support = parts.reduce((sum, other) => sum + other.weight * likeness(part.light, other.light), 0);
    if (support > most) {
      most = support;
      best = part;
    }
  }
  const sum: Light = [0, 0, 0];
  let total = 0;
  for (const { light, weight } of parts) {
    const share = weight * likeness(best.light, light);
    total += share;
    for (const channel of [0, 1, 2] as const) sum[channel] += share * light[channel];
  }
  return [sum[0] / total, sum[1] / total, sum[2] / total];
}

/** 1 for the same colour, falling to nothing as they differ by more than {@link ALIKE}. */
function likeness(one: Light, other: Light): number {
  const squares = (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2 + (one[2] - other[2]) ** 2;
  return Math.exp(-squares / (2 * ALIKE ** 2));
}
