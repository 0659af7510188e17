/** Fixed margins: the margins are given, the gaps share the rest. */
import type { PlacementRule } from '../../project/project.ts';
import { gapCount, type Demand } from './rule.ts';

export function fixedMargins({ stitches }: Extract<PlacementRule, { kind: 'margins' }>): Demand {
  return {
    margin: stitches,
    gap: null,
    distance: (_left, _right, gaps) => (gaps ? gaps.most - gaps.least : 0),
    ideal(frame) {
      const gaps = gapCount(frame);
      return { margin: stitches, gap: gaps > 0 ? (frame.total - 2 * stitches) / gaps : null };
    },
  };
}
