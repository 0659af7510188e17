/** How long a float may be, and how far up a strand is carried. */
import { wayMm, type FloatLimit, type Gauge, type Gauges } from '../piece/index.ts';

/**
 * The longest run in stitches that is within the limit; anything longer is
 * over. Stitches or mm, whichever bites first. Worked as `mm × gauge / 100`
 * rather than by dividing by the stitch width, so that 7 stitches of 28 in
 * 10 cm are 25 mm and not a hair more.
 */
export function longestWithin(limit: FloatLimit, gauge: Gauge): number {
  if (limit.mm === null) return limit.stitches;
  return Math.min(limit.stitches, Math.floor((limit.mm * gauge.stitches) / 100));
}

/** The longest run within the limit on every one of the rows `first` … `last` (1-based). */
export function longestBetween(limit: FloatLimit, gauges: Gauges, first: number, last: number): number {
  let longest = Infinity;
  for (const run of gauges) {
    if (run.first <= last && run.last >= first) longest = Math.min(longest, longestWithin(limit, run.gauge));
  }
  return longest;
}

/** A strand is carried straight up over at most so many rows, or so many mm, whichever is less (common practice, no source). */
export const MOST_CARRIED_UP = { rows: 8, mm: 25 };

/** What a sum of row heights may miss by. */
const ROUNDING_MM = 1e-9;

/** Whether a strand is carried up from row `from` to row `to` (1-based); else it is cut and joined again. */
export function isCarriedUp(gauges: Gauges, from: number, to: number): boolean {
  return to - from <= MOST_CARRIED_UP.rows && wayMm(gauges, 0, from, to) <= MOST_CARRIED_UP.mm + ROUNDING_MM;
}
