/** The motifs as the list shows them. */
import type { Motif, MotifId } from '@shared/motif/index.ts';

/**
 * The list as it was `before`, the same object, while nothing differs but the
 * motif on the bench, whose row follows it by itself: so not all the rows of a
 * long list are gone through for each cell that is painted. Otherwise `now`.
 */
export function listedAfter(before: readonly Motif[], now: readonly Motif[], onBench: MotifId): readonly Motif[] {
  const isSame = (motif: Motif, at: number): boolean =>
    motif === now[at] || (motif.id === onBench && now[at]?.id === onBench);
  return before.length === now.length && before.every(isSame) ? before : now;
}
