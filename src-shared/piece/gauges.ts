/**
 * The gauges up a piece, and the lengths that follow from them.
 *
 * A rib, a hem and two-colour fabric are knitted to gauges of their own, so a
 * length in mm depends on the rows it lies on. Neighbouring rows of one gauge
 * are one run: a piece whose sections all have its own gauge has a single run
 * and is measured as one without sections.
 */
import { rowHeightMm, stitchWidthMm } from './gauge.ts';
import type { Gauge, Sectioned } from './model.ts';

/** Rows `first` … `last` of one gauge. */
export interface GaugeRun {
  readonly gauge: Gauge;
  readonly first: number;
  /** Infinity for the uppermost: the body goes on as far as it is knitted. */
  readonly last: number;
}

/** From row 1 up without a gap; never empty. */
export type Gauges = readonly GaugeRun[];

/** The gauges of a piece, whatever its rows are. */
export function gaugesOf({ hemRows, hem, sections, gauge }: Omit<Sectioned, 'isLined'>): Gauges {
  const runs: GaugeRun[] = [];
  let below = 0;
  const add = (rows: number, own: Gauge): void => {
    const last = runs.at(-1);
    if (rows === 0) return;
    if (last && isSameGauge(last.gauge, own)) runs[runs.length - 1] = { ...last, last: below + rows };
    else runs.push({ gauge: own, first: below + 1, last: below + rows });
    below += rows;
  };
  add(hemRows, hem.gauge ?? gauge);
  for (const part of sections) add(part.rows, part.gauge ?? gauge);
  add(Infinity, gauge);
  return runs;
}

/** One gauge all the way up. */
export function evenGauge(gauge: Gauge): Gauges {
  return [{ gauge, first: 1, last: Infinity }];
}

export function isSameGauge(one: Gauge, other: Gauge): boolean {
  return one.stitches === other.stitches && one.rows === other.rows;
}

/** The gauge of `row` (1-based). */
export function gaugeAt(gauges: Gauges, row: number): Gauge {
  const run = gauges.find(({ last }) => row <= last);
  if (!run) throw new RangeError(`Row ${row} has no gauge`);
  return run.gauge;
}

/** The gauges of the rows `first` … `last`, from the bottom up, each as often as it comes. */
export function gaugesBetween(gauges: Gauges, first: number, last: number): Gauge[] {
  return gauges.filter((run) => run.first <= last && run.last >= first).map(({ gauge }) => gauge);
}

/** Length in mm of the rows `first` … `last`; 0 if there are none. */
export function lengthMm(gauges: Gauges, first: number, last: number): number {
  let mm = 0;
  for (const run of gauges) {
    const rows = Math.min(last, run.last) - Math.max(first, run.first) + 1;
    if (rows > 0) mm += rows * rowHeightMm(run.gauge);
  }
  return mm;
}

/**
 * The way in mm of a strand from `stitches` aside on row `from` to row `to`
 * above it: sideways and then up. A little more than the straight line, and
 * sideways by the wider of the two rows' stitches, so that a strand cut to it
 * is never short.
 */
export function wayMm(gauges: Gauges, stitches: number, from: number, to: number): number {
  const widest = Math.max(stitchWidthMm(gaugeAt(gauges, from)), stitchWidthMm(gaugeAt(gauges, to)));
  return stitches * widest + lengthMm(gauges, from + 1, to);
}

/** How many rows from row `first` up come nearest to `mm`: at least 1; halfway between two, the larger. */
export function nearestRowsUp(gauges: Gauges, first: number, mm: number): number {
  return nearestIn(
    gauges
      .filter(({ last }) => last >= first)
      .map((run) => ({ gauge: run.gauge, rows: run.last - Math.max(run.first, first) + 1 })),
    mm,
  );
}

/** How many rows from row `last` down come nearest to `mm`: at least 1, at most `last`; halfway, the larger. */
export function nearestRowsDown(gauges: Gauges, last: number, mm: number): number {
  return nearestIn(
    gauges
      .filter(({ first }) => first <= last)
      .map((run) => ({ gauge: run.gauge, rows: Math.min(run.last, last) - run.first + 1 }))
      .reverse(),
    mm,
  );
}

function nearestIn(runs: readonly { readonly gauge: Gauge; readonly rows: number }[], mm: number): number {
  let counted = 0;
  let left = mm;
  for (const { gauge, rows } of runs) {
    // As `mm × gauge / 100`, so that a length that is whole in rows comes out whole.
    const wanted = (left * gauge.rows) / 100;
    if (wanted < rows) return Math.max(1, counted + Math.round(wanted));
    left -= rows * rowHeightMm(gauge);
    counted += rows;
  }
  return Math.max(1, counted);
}
