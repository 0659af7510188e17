/** Which motif to look at after undo or redo. */
import type { Motif, MotifId } from '@shared/project/index.ts';

/**
 * The motif to put on the bench when the project goes from one list of motifs
 * to the other while `on` lies there: that one if it is among those that
 * differ or if none differs, else the first that does, so that no step is taken
 * back out of sight. Where it is gone, its neighbour takes its place.
 */
export function motifToShow(from: readonly Motif[], to: readonly Motif[], on: MotifId): MotifId {
  const was = new Map(from.map((motif) => [motif.id, motif]));
  const differing = to.filter((motif) => was.get(motif.id) !== motif).map(({ id }) => id);
  const stays = to.some(({ id }) => id === on);
  const [first] = differing;
  if (first !== undefined && !(stays && differing.includes(on))) return first;
  if (stays) return on;
  const at = from.findIndex(({ id }) => id === on);
  return (to[Math.min(Math.max(0, at), to.length - 1)] as Motif).id;
}
