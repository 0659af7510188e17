/** Fixed gap: the gaps are given, the margins share the rest. */
import { gapCount, type SolvingRule } from './rule.ts';

export const fixedGap: SolvingRule<'gaps'> = {
  startFrom: (spaces) => ({ kind: 'gaps', stitches: spaces?.gaps[0] ?? 0 }),
  demandOf: ({ stitches }) => ({
    margin: null,
    gap: stitches,
    distance: () => 0,
    ideal(frame) {
      const gaps = gapCount(frame);
      return { margin: (frame.total - gaps * stitches) / 2, gap: gaps > 0 ? stitches : null };
    },
  }),
};
