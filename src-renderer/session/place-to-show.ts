/** Which piece and which size are looked at after a step is taken back or done again. */
import { pieceInSize, type Place, type Project, type Reference } from '@shared/project/index.ts';

/**
 * The place to look at after a step that names `touched`, when the project was
 * `from` and is `to`, and `on` was looked at: that one if the step changed it,
 * or no piece at all, else the first that it changed, so that no step is taken
 * back out of sight. Where it is gone, its neighbour takes its place.
 */
export function placeToShow(touched: readonly Reference[], from: Project, to: Project, on: Place): Place {
  const piece = pieceToShow(touched, from, to, on.piece);
  return { piece, size: sizeToShow(from, to, { ...on, piece }) };
}

function pieceToShow(touched: readonly Reference[], from: Project, to: Project, on: Place['piece']): Place['piece'] {
  const named = new Set(touched.flatMap((thing) => ('piece' in thing ? [thing.piece] : [])));
  const [first] = to.pieces.filter(({ id }) => named.has(id));
  const stays = to.pieces.some(({ id }) => id === on);
  if (first !== undefined && !(stays && named.has(on))) return first.id;
  return stays ? on : neighbourOf(from.pieces, to.pieces, on);
}

function sizeToShow(from: Project, to: Project, on: Place): Place['size'] {
  const changed = to.sizes.filter(({ id }) => inSize(from, { ...on, size: id }) !== inSize(to, { ...on, size: id }));
  const stays = to.sizes.some(({ id }) => id === on.size);
  const [first] = changed;
  const isNews = from.pieces.some(({ id }) => id === on.piece);
  if (isNews && first !== undefined && !(stays && changed.some(({ id }) => id === on.size))) return first.id;
  return stays ? on.size : neighbourOf(from.sizes, to.sizes, on.size);
}

/** What the piece is in a size, to be compared; empty where there is no such piece or size. */
function inSize({ pieces }: Project, { piece, size }: Place): string {
  const there = pieces.find(({ id }) => id === piece);
  if (!there?.perSize.some((numbers) => numbers.size === size)) return '';
  // What a group has in other sizes goes along with it, and is no part of this one.
  return JSON.stringify(pieceInSize(there, size), (key, value: unknown) =>
    key === 'acrossInSizes' ? undefined : value,
  );
}

interface Named {
  readonly id: string;
}

function neighbourOf(from: readonly Named[], to: readonly Named[], gone: string): string {
  const at = from.findIndex(({ id }) => id === gone);
  return (to[Math.min(Math.max(0, at), to.length - 1)] as Named).id;
}
