/** What yarns and motifs are called in the sentences of the running order. */
import type { LengthUnit } from '../../length/index.ts';
import type { KnitPiece } from '../../project/index.ts';
import type { ActNames } from '../../words/index.ts';

/** Of the piece that the order is for. */
export function actNames({ yarns, bands, fills }: KnitPiece, unit: LengthUnit = 'cm'): ActNames {
  const motifs = new Map<string, string>();
  for (const { motif } of [...bands.flatMap(({ groups }) => groups), ...fills]) motifs.set(motif.id, motif.name);
  return { yarn: (index) => yarns[index]?.name ?? '', motif: (id) => motifs.get(id) ?? '', unit };
}
