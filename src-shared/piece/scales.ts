/** How long so many stitches or rows are, and how many come nearest to a length, at the gauges of their rows. */
import { nearestCount } from './gauge.ts';
import { gaugeAt, lengthMm, nearestRowsDown, nearestRowsUp, type Gauges } from './gauges.ts';
import type { Gauge } from './model.ts';

export interface Scale {
  readonly mmOf: (count: number) => number;
  /** At least 1. */
  readonly nearest: (mm: number) => number;
}

/** Counts of one gauge. */
export function evenScale(gauge: Gauge, of: 'stitches' | 'rows'): Scale {
  return { mmOf: (count) => (count * 100) / gauge[of], nearest: (mm) => nearestCount(mm, gauge[of]) };
}

/** Stitches of a row. */
export function stitchScale(gauges: Gauges, row: number): Scale {
  return evenScale(gaugeAt(gauges, Math.max(1, row)), 'stitches');
}

/** Rows from `first` up. */
export function scaleUp(gauges: Gauges, first: number): Scale {
  return {
    mmOf: (rows) => lengthMm(gauges, first, first + rows - 1),
    nearest: (mm) => nearestRowsUp(gauges, first, mm),
  };
}

/** Rows from `last` down; below row 1 they go on as row 1 does. */
export function scaleDown(gauges: Gauges, last: number): Scale {
  const lowest = evenScale(gaugeAt(gauges, 1), 'rows');
  return {
    mmOf: (rows) => lengthMm(gauges, last - rows + 1, last) + lowest.mmOf(Math.max(0, rows - last)),
    nearest: (mm) => nearestRowsDown(gauges, last, mm),
  };
}
