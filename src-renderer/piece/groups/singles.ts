/** Single motifs all round: groups of one copy each that are alike. */
import type { MotifId } from '@shared/motif/index.ts';
import type { Band, Group } from '@shared/pattern/index.ts';

/** How many single motifs the groups are; null where they are no single motifs, or not all alike. */
export function singlesOf(groups: readonly Group[]): number | null {
  const [first] = groups;
  const isAlike = (group: Group): boolean =>
    group.across === 1 &&
    group.motif === first?.motif &&
    group.up === first.up &&
    group.isMirrored === first.isMirrored &&
    group.rise === first.rise &&
    group.hasOwnBall === first.hasOwnBall;
  return groups.every(isAlike) ? groups.length : null;
}

/**
 * A band of so many single motifs, each as its first group is, in the size
 * that is looked at and in all others. Needles by hand are those of other
 * groups, so the seam continues then.
 */
export function asSingles(
  { groups, rule }: Pick<Band, 'groups' | 'rule'>,
  count: number,
): Pick<Band, 'groups' | 'rule'> {
  const { acrossInSizes: _, ...alike } = groups[0] as Group;
  return {
    groups: Array.from({ length: count }, () => ({ ...alike, across: 1 })),
    rule: rule.kind === 'by-hand' ? { kind: 'seam' } : rule,
  };
}

/** The groups with another motif in all of them. */
export function withMotifInAll(groups: readonly Group[], motif: MotifId): Group[] {
  return groups.map((group) => ({ ...group, motif }));
}
