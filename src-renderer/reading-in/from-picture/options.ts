/** The options for a picture that is turned into a motif. Pure. */
import type { Gauge } from '@shared/piece/index.ts';
import type { Crop, PictureOptions } from '@shared/reading/index.ts';
import { wholeOf, type Size } from './crop.ts';
import { firstTarget, forCrop, type Target } from './target.ts';

export interface FromPictureOptions {
  readonly crop: Crop;
  readonly target: Target;
  readonly yarns: number;
  readonly dithers: boolean;
  readonly keepsEdges: boolean;
}

/** All of the picture, in two yarns: one pass feeds no more to a row. */
export function firstOptions(picture: Size, gauge: Gauge): FromPictureOptions {
  const crop = wholeOf(picture);
  return { crop, target: firstTarget(crop, gauge), yarns: 2, dithers: false, keepsEdges: false };
}

/** Another part of the picture; the number of stitches or rows that was given stays. */
export function withCrop(options: FromPictureOptions, crop: Crop, gauge: Gauge): FromPictureOptions {
  return { ...options, crop, target: forCrop(options.target, crop, gauge) };
}

export function pictureOptionsOf({ crop, target, yarns, dithers, keepsEdges }: FromPictureOptions): PictureOptions {
  return {
    crop,
    stitches: target.stitches,
    rows: target.rows,
    yarns,
    reduction: keepsEdges ? 'edges' : 'mean',
    dithering: dithers,
  };
}
