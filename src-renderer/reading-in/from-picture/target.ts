/**
 * How many stitches and rows a picture becomes. A stitch is wider than a row
 * is tall, so one number follows from the other by the gauge. Pure.
 */
import { MOST_ROWS } from '@shared/grid/index.ts';
import type { Gauge } from '@shared/piece/index.ts';
import { rowsFor, stitchesFor } from '@shared/reading/index.ts';
import type { Size } from './crop.ts';

export interface Target {
  readonly stitches: number;
  readonly rows: number;
  /** Null: each stands for itself. Otherwise the one that was given; the other follows. */
  readonly leads: 'stitches' | 'rows' | null;
}

/** A width at which most pictures can be told; fewer where the picture is so tall that a motif has no room for its rows. */
const FIRST_STITCHES = 60;

export function firstTarget(crop: Size, gauge: Gauge): Target {
  const wide = withStitches({ stitches: 1, rows: 1, leads: 'stitches' }, FIRST_STITCHES, crop, gauge);
  return wide.rows <= MOST_ROWS ? wide : withRows(wide, MOST_ROWS, crop, gauge);
}

export function withStitches(target: Target, stitches: number, { width, height }: Size, gauge: Gauge): Target {
  if (target.leads === null) return { ...target, stitches };
  return { stitches, rows: rowsFor(width, height, stitches, gauge), leads: 'stitches' };
}

export function withRows(target: Target, rows: number, { width, height }: Size, gauge: Gauge): Target {
  if (target.leads === null) return { ...target, rows };
  return { stitches: stitchesFor(width, height, rows, gauge), rows, leads: 'rows' };
}

/** The same target for another part of the picture: the number that was given stays. */
export function forCrop(target: Target, crop: Size, gauge: Gauge): Target {
  if (target.leads === null) return target;
  return target.leads === 'stitches'
    ? withStitches(target, target.stitches, crop, gauge)
    : withRows(target, target.rows, crop, gauge);
}

/** Lets rows follow stitches again, or each stand for itself. */
export function linked(target: Target, isLinked: boolean, crop: Size, gauge: Gauge): Target {
  return isLinked
    ? withStitches({ ...target, leads: 'stitches' }, target.stitches, crop, gauge)
    : { ...target, leads: null };
}
