/** Letters that would be read backwards. */
import { isMirroredWhenWorn } from '../bed/index.ts';
import { copiesOf } from '../pattern/index.ts';
import type { KnitPattern } from '../project/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/**
 * `mirrored-lettering` and `mirrored-lettering-in-fill`: a motif that must be
 * read the right way round is seen mirrored on the finished face, because its
 * chart shows the needles or because its group, or its all-over, is mirrored;
 * both together turn it back.
 */
export function mirroredLettering({ piece, laid, groups }: Inspected): Finding[] {
  return laid.flatMap(({ asked, placed }) => {
    const given = copiesOf<KnitPattern>(asked);
    return copiesOf(placed).flatMap((copies, index): Finding[] => {
      const { motif, isMirrored } = given[index] as (typeof given)[number];
      if (!motif.isLettering || isMirroredWhenWorn(motif.shows, piece.finishedFace) === isMirrored) return [];
      const found = { rows: [copies.firstRow, copies.lastRow], motif: motif.name, isMirrored } as const;
      return 'across' in copies
        ? [{ code: 'mirrored-lettering', ...found, group: groups.indexOf(copies) }]
        : [{ code: 'mirrored-lettering-in-fill', ...found, allOver: copies.number }];
    });
  });
}
