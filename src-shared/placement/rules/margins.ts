/** Fixed margins: the margins are given, the gaps share the rest. */
import { gapCount, type SolvingRule } from './rule.ts';

export const fixedMargins: SolvingRule<'margins'> = {
  startFrom: (spaces) => ({ kind: 'margins', stitches: spaces ? Math.max(0, Math.min(...spaces.margins)) : 0 }),
  demandOf: ({ stitches }) => ({
    margin: stitches,
    gap: null,
    distance: (_left, _right, gaps) => (gaps ? gaps.most - gaps.least : 0),
    ideal(frame) {
      const gaps = gapCount(frame);
      return { margin: stitches, gap: gaps > 0 ? (frame.total - 2 * stitches) / gaps : null };
    },
  }),
};
