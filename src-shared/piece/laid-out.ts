/**
 * The piece laid out by its gauges: where the edges of its stitches and rows
 * come to lie, in mm.
 *
 * Each section is as wide and as high as its own gauge makes it, and all of
 * them are centred on the middle of the bed, as the piece lies in the hand: the
 * left edge of slot s lies s stitches to the right of there. Heights are counted
 * from the lower edge of the lowest row. Neighbouring rows of one gauge are one run, and
 * share one scale.
 */
import { rowHeightMm, stitchWidthMm } from './gauge.ts';
import type { GaugeRun, Gauges } from './gauges.ts';

/** Rows of one gauge, as they lie. */
export interface LaidRun extends GaugeRun {
  readonly stitchMm: number;
  readonly rowMm: number;
  /** From the lower edge of the piece to that of the run. */
  readonly footMm: number;
}

/** From the lowest row up without a gap; never empty. */
export type LaidOut = readonly LaidRun[];

/** Lays out the rows `from` (1-based) and up; what lies below is left out, and y counts from there. */
export function layOut(gauges: Gauges, from = 1): LaidOut {
  let footMm = 0;
  return gauges
    .filter(({ last }) => last >= from)
    .map(({ gauge, first, last }): LaidRun => {
      const lowest = Math.max(first, from);
      const rowMm = rowHeightMm(gauge);
      const run = { gauge, first: lowest, last, stitchMm: stitchWidthMm(gauge), rowMm, footMm };
      footMm += (last - lowest + 1) * rowMm;
      return run;
    });
}

/** The run of `row`; below the lowest row, the lowest run goes on. */
export function runOf(laid: LaidOut, row: number): LaidRun {
  return laid.find(({ last }) => row <= last) as LaidRun;
}

/** Height of the lower edge of `row`. */
export function rowFootMm(laid: LaidOut, row: number): number {
  const { first, footMm, rowMm } = runOf(laid, row);
  return footMm + (row - first) * rowMm;
}

/** Height of the upper edge of `row`, which is the lower edge of the one above it. */
export function rowHeadMm(laid: LaidOut, row: number): number {
  return rowFootMm(laid, row + 1);
}

/** How many rows, with fractions, lie below `mm`; less than 0 below the piece. */
export function rowsBelow(laid: LaidOut, mm: number): number {
  const run = laid.findLast(({ footMm }) => footMm <= mm) ?? (laid[0] as LaidRun);
  const lowest = (laid[0] as LaidRun).first;
  return run.first - lowest + (mm - run.footMm) / run.rowMm;
}
