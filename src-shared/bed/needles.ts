/** The needles of a bed. */
import type { Run, Slot } from './slot.ts';

/** The needles of a bed of `needles`: half on each side of the centre, the odd one on the right. */
export function needlesOf(needles: number): Run {
  const left = Math.floor(needles / 2);
  return { first: -left as Slot, last: (needles - left - 1) as Slot };
}
