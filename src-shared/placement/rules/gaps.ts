/** Fixed gap: the gaps are given, the margins share the rest. */
import type { PlacementRule } from '../../project/project.ts';
import { gapCount, type Demand } from './rule.ts';

export function fixedGap({ stitches }: Extract<PlacementRule, { kind: 'gaps' }>): Demand {
  return {
    margin: null,
    gap: stitches,
    distance: () => 0,
    ideal(frame) {
      const gaps = gapCount(frame);
      return { margin: (frame.total - gaps * stitches) / 2, gap: gaps > 0 ? stitches : null };
    },
  };
}
