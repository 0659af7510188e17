/** What yarns and motifs of a knitter's order are called, for what is said of its acts. */
import type { KnittingOrder } from '@shared/knitting/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import type { ActNames } from '@shared/words/index.ts';

export function namesIn({ yarns, motifs }: Pick<KnittingOrder, 'yarns' | 'motifs'>, unit: LengthUnit): ActNames {
  return {
    yarn: (index) => yarns[index]?.name ?? '',
    motif: (id) => motifs.find((motif) => motif.id === id)?.name ?? '',
    unit,
  };
}
