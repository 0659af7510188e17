/** The motifs as the list shows them. */
import type { Motif, MotifId } from '@shared/motif/index.ts';

/**
 * The list as it was `before`, the same object, while nothing differs but the
 * motif on the bench, whose row follows it by itself: so not all the rows of a
 * long list are gone through for each cell that is painted. Otherwise `now`.
 */
export function listedAfter(before: readonly Motif[], now: readonly Motif[], onBench: MotifId): readonly Motif[] {
  if (before.length !== now.length) return now;
  for (let at = 0; at < now.length; at++) {
    if (before[at] !== now[at] && (before[at]?.id !== onBench || now[at]?.id !== onBench)) return now;
  }
  return before;
}
