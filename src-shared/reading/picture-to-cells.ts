/** Any picture, turned into a motif. */
import { MOST_COLUMNS, MOST_ROWS, type Grid } from '../grid/index.ts';
import { cellAspect, type Gauge } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import { MOST_YARNS } from './clusters.ts';
import { dither, nearestYarn } from './dither.ts';
import { groundFirst } from './ground-first.ts';
import { centresOf, kMeans, nearestOf } from './k-means.ts';
import { colourTextOf, linearOfOklab, oklabOfLinear, oklabOfText, type Oklab } from './oklab.ts';
import { onPaper, type Picture } from './picture.ts';
import { reduceTo, type CellLight, type Crop, type Reduction } from './reduce.ts';
import type { Steps } from './steps.ts';

export interface PictureOptions {
  /** Null: all of the picture. */
  readonly crop: Crop | null;
  readonly stitches: number;
  readonly rows: number;
  /** How many, found in the picture; or which, as `#rrggbb`. */
  readonly yarns: number | readonly string[];
  readonly reduction: Reduction;
  readonly dithering: boolean;
}

export interface PictureMotif {
  readonly grid: Grid;
  /** `#rrggbb` by palette index, the ground first; yarns that no cell has stand last. */
  readonly colours: readonly string[];
  readonly ground: number;
}

/** Colours are drawn the same way every time. */
const SEED = 7;

/** Cells looked at to find the yarns. */
const MOST_CELLS = 20_000;

/**
 * Rows that keep a part of a picture `width` × `height` in proportion when it
 * is knitted `stitches` wide at that gauge; at least 1.
 */
export function rowsFor(width: number, height: number, stitches: number, gauge: Gauge): number {
  return Math.max(1, Math.round((stitches * height * cellAspect(gauge)) / width));
}

/** Inverse of {@link rowsFor}, to the nearest stitch. */
export function stitchesFor(width: number, height: number, rows: number, gauge: Gauge): number {
  return Math.max(1, Math.round((rows * width) / (height * cellAspect(gauge))));
}

/**
 * The picture as a motif. Throws `motif-too-large`, `yarns-out-of-range` or
 * `crop-outside-picture`.
 */
export function* pictureToCells(picture: Picture, options: PictureOptions): Steps<PictureMotif> {
  const { stitches, rows, reduction } = options;
  const crop = options.crop ?? { left: 0, top: 0, width: picture.width, height: picture.height };
  assertOptions(picture, crop, options);
  const light = yield* reduceTo(onPaper(picture), crop, stitches, rows, reduction);
  yield { stage: 'sort-colours', done: 0 };
  const yarns = typeof options.yarns === 'number' ? yarnsIn(light, options.yarns) : options.yarns.map(oklabOfText);
  const cells = options.dithering
    ? yield* dither(light, stitches, rows, yarns.map(linearOfOklab))
    : Uint8Array.from({ length: stitches * rows }, (_, cell) => nearestYarn(light, cell, yarns));
  return { ...groundFirst({ width: stitches, height: rows, cells }, yarns.map(colourTextOf)), ground: 0 };
}

function assertOptions({ width, height }: Picture, crop: Crop, { stitches, rows, yarns }: PictureOptions): void {
  const isCount = (count: number, most: number): boolean => Number.isInteger(count) && count >= 1 && count <= most;
  if (!isCount(stitches, MOST_COLUMNS) || !isCount(rows, MOST_ROWS)) {
    throw problemError('motif-too-large', {
      width: stitches,
      height: rows,
      mostWidth: MOST_COLUMNS,
      mostHeight: MOST_ROWS,
    });
  }
  const count = typeof yarns === 'number' ? yarns : yarns.length;
  if (!isCount(count, MOST_YARNS) || count < 2) {
    throw problemError('yarns-out-of-range', { given: count, least: 2, most: MOST_YARNS });
  }
  const isInside =
    crop.left >= 0 &&
    crop.top >= 0 &&
    crop.width > 0 &&
    crop.height > 0 &&
    crop.left + crop.width <= width &&
    crop.top + crop.height <= height;
  if (!isInside) throw problemError('crop-outside-picture', { width, height });
}

/** The yarns that suit the cells best: the means of so many groups, sorted as eyes do. Fewer where there are fewer colours. */
function yarnsIn(light: CellLight, count: number): Oklab[] {
  const cells = light.length / 3;
  const step = Math.max(1, cells / MOST_CELLS);
  const colours = Float64Array.from(
    Array.from({ length: Math.floor(cells / step) }, (_, i) => {
      const at = Math.floor(i * step) * 3;
      return oklabOfLinear(light[at] as number, light[at + 1] as number, light[at + 2] as number);
    }).flat(),
  );
  const centres = kMeans(colours, count, SEED);
  const means = centresOf(colours, nearestOf(colours, centres), centres);
  return Array.from({ length: means.length / 3 }, (_, i) => [...means.subarray(i * 3, i * 3 + 3)] as unknown as Oklab);
}
