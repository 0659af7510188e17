/** When weights are looked at: often, for fabric that hangs slack at an edge drops its stitches. */
import type { KnittingOrder } from './model.ts';
import { stopsOf } from './stops.ts';

/** So many rows after weights were hung or moved they are looked at again (common practice, no source). */
const LOOKED_AT_AFTER = 30;

/**
 * How many rows were knitted since the weights were hung or moved, at a reading
 * at which they are looked at: at each 30th of them; null at any other one, and
 * where none hang.
 */
export function weightsDue(knitting: KnittingOrder, reading: number): number | null {
  const stops = stopsOf(knitting);
  for (let at = reading; at >= 0; at--) {
    const done = stops[at]?.acts.flatMap(({ act }) => (act.kind === 'weights' ? [act.do] : [])).at(-1);
    if (done === undefined) continue;
    const rows = reading - at;
    return done !== 'off' && rows > 0 && rows % LOOKED_AT_AFTER === 0 ? rows : null;
  }
  return null;
}
