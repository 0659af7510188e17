/** Letters that would be read backwards. */
import { isMirroredWhenWorn } from '../bed/index.ts';
import type { KnitFill, KnitGroup } from '../project/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/**
 * `mirrored-lettering`: a motif that must be read the right way round is seen
 * mirrored on the finished face, because its chart shows the needles or because
 * its group is mirrored; both together turn it back.
 */
export function mirroredLettering({ piece, groups }: Inspected): Finding[] {
  const given = piece.bands.flatMap((band) => band.groups);
  return groups.flatMap(({ firstRow, lastRow }, group): Finding[] => {
    const { motif, isMirrored: isGroupMirrored } = given[group] as KnitGroup;
    if (!motif.isLettering || isMirroredWhenWorn(motif.shows, piece.finishedFace) === isGroupMirrored) return [];
    return [{ code: 'mirrored-lettering', rows: [firstRow, lastRow], group, motif: motif.name, isGroupMirrored }];
  });
}

/** `mirrored-lettering-in-fill`: the same, said of a fill. */
export function mirroredLetteringInFills({ piece, fills }: Inspected): Finding[] {
  return fills.flatMap(({ fill, firstRow, lastRow }): Finding[] => {
    const { motif, isMirrored: isFillMirrored } = piece.fills[fill] as KnitFill;
    if (!motif.isLettering || isMirroredWhenWorn(motif.shows, piece.finishedFace) === isFillMirrored) return [];
    const code = 'mirrored-lettering-in-fill';
    return [{ code, rows: [firstRow, lastRow], fill, motif: motif.name, isFillMirrored }];
  });
}
