/** All that can be wished of a picture that is turned into a motif. Pure. */
import type { Gauge } from '@shared/piece/index.ts';
import type { Crop, PictureOptions } from '@shared/reading/index.ts';
import { wholeOf, type Size } from './crop.ts';
import { firstTarget, forCrop, type Target } from './target.ts';

export interface Wishes {
  readonly crop: Crop;
  readonly target: Target;
  readonly yarns: number;
  readonly dithers: boolean;
  readonly keepsEdges: boolean;
}

/** All of the picture, in two yarns: one pass feeds no more to a row. */
export function firstWishes(picture: Size, gauge: Gauge): Wishes {
  const crop = wholeOf(picture);
  return { crop, target: firstTarget(crop, gauge), yarns: 2, dithers: false, keepsEdges: false };
}

/** Another part of the picture; the number of stitches or rows that was given stays. */
export function withCrop(wishes: Wishes, crop: Crop, gauge: Gauge): Wishes {
  return { ...wishes, crop, target: forCrop(wishes.target, crop, gauge) };
}

export function optionsOf({ crop, target, yarns, dithers, keepsEdges }: Wishes): PictureOptions {
  return {
    crop,
    stitches: target.stitches,
    rows: target.rows,
    yarns,
    reduction: keepsEdges ? 'edges' : 'mean',
    dithering: dithers,
  };
}
