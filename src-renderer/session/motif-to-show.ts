/** Which motif lies on the bench after a step is taken back or done again. */
import type { Motif, MotifId } from '@shared/motif/index.ts';
import type { Reference } from '@shared/project/index.ts';

/**
 * The motif to put on the bench after a step that names `touched`, when the
 * motifs were `from` and are `to`, and `on` lay there: that one if it is among
 * those touched or if none is, else the first that is, so that no step is taken
 * back out of sight. Where it is gone, its neighbour takes its place.
 */
export function motifToShow(
  touched: readonly Reference[],
  from: readonly Motif[],
  to: readonly Motif[],
  on: MotifId,
): MotifId {
  const named = new Set(touched.flatMap((thing) => ('motif' in thing ? [thing.motif] : [])));
  const seen = to.filter(({ id }) => named.has(id)).map(({ id }) => id);
  const stays = to.some(({ id }) => id === on);
  const [first] = seen;
  if (first !== undefined && !(stays && seen.includes(on))) return first;
  if (stays) return on;
  const at = from.findIndex(({ id }) => id === on);
  return (to[Math.min(Math.max(0, at), to.length - 1)] as Motif).id;
}
