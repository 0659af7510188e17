/** Even spaces: margins and gaps all the same. */
import { gapCount, type SolvingRule } from './rule.ts';

export const evenSpaces: SolvingRule<'even'> = {
  startFrom: () => ({ kind: 'even' }),
  demandOf: () => ({
    margin: null,
    gap: null,
    distance(left, right, gaps) {
      if (!gaps) return Math.abs(left - right);
      return Math.max(left, right, gaps.most) - Math.min(left, right, gaps.least);
    },
    ideal(frame) {
      const space = frame.total / (gapCount(frame) + 2);
      return { margin: space, gap: gapCount(frame) > 0 ? space : null };
    },
  }),
};
