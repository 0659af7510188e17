/** Letters that would be read backwards. */
import { isMirroredWhenWorn } from '../bed/index.ts';
import { motifOf } from '../project/project.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/**
 * `mirrored-lettering`: a motif that must be read the right way round is seen
 * mirrored on the finished face, because its chart shows the needles or because
 * its group is mirrored; both together turn it back.
 */
export function mirroredLettering({ project, groups }: Inspected): Finding[] {
  const { finishedFace } = project.piece;
  const given = project.bands.flatMap((band) => band.groups);
  return groups.flatMap(({ motif: id, firstRow, lastRow }, group): Finding[] => {
    const motif = motifOf(project, id);
    const isGroupMirrored = given[group]?.isMirrored ?? false;
    if (!motif.isLettering || isMirroredWhenWorn(motif.shows, finishedFace) === isGroupMirrored) return [];
    return [{ code: 'mirrored-lettering', rows: [firstRow, lastRow], group, motif: motif.name, isGroupMirrored }];
  });
}

/** `mirrored-lettering-in-fill`: the same, said of a fill. */
export function mirroredLetteringInFills({ project, fills }: Inspected): Finding[] {
  const { finishedFace } = project.piece;
  return fills.flatMap(({ fill, firstRow, lastRow, motif: id }): Finding[] => {
    const motif = motifOf(project, id);
    const isFillMirrored = project.fills[fill]?.isMirrored ?? false;
    if (!motif.isLettering || isMirroredWhenWorn(motif.shows, finishedFace) === isFillMirrored) return [];
    const code = 'mirrored-lettering-in-fill';
    return [{ code, rows: [firstRow, lastRow], fill, motif: motif.name, isFillMirrored }];
  });
}
