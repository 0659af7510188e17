/** When weights are looked at: often, for fabric that hangs slack at an edge drops its stitches. */
import type { KnittingOrder } from './model.ts';
import { stopsOf } from './stops.ts';

/** So many rows after weights were hung or moved they are looked at again (common practice, no source). */
const LOOKED_AT_AFTER = 30;
/** Where the order itself moves them within so many rows, they wait for it. */
const SOON = 5;

/**
 * How many rows were knitted since the weights were hung or moved, or looked at
 * last, at a reading at which they are looked at: each 30th of them; null at any
 * other one, where the order moves them before long, and where none hang.
 */
export function weightsDue(knitting: KnittingOrder, reading: number): number | null {
  const stops = stopsOf(knitting);
  for (let at = reading; at >= 0; at--) {
    const done = stops[at]?.acts.flatMap(({ act }) => (act.kind === 'weights' ? [act.do] : [])).at(-1);
    if (done === undefined) continue;
    const rows = reading - at;
    if (done === 'off' || rows === 0 || rows % LOOKED_AT_AFTER !== 0) return null;
    const isMovedSoon = stops
      .slice(reading + 1, reading + 1 + SOON)
      .some(({ acts }) => acts.some(({ act }) => act.kind === 'weights'));
    return isMovedSoon ? null : LOOKED_AT_AFTER;
  }
  return null;
}
