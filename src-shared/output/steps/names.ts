/** What yarns and motifs are called in the sentences of the running order. */
import type { LengthUnit } from '../../length/index.ts';
import { copiesIn } from '../../pattern/index.ts';
import type { KnitPiece } from '../../project/index.ts';
import type { ActNames } from '../../words/index.ts';

/** Of the piece that the order is for. */
export function actNames(piece: KnitPiece, unit: LengthUnit = 'cm'): ActNames {
  const { yarns } = piece;
  const motifs = new Map(copiesIn(piece).map(({ motif }) => [motif.id, motif.name]));
  return { yarn: (index) => yarns[index]?.name ?? '', motif: (id) => motifs.get(id) ?? '', unit };
}
