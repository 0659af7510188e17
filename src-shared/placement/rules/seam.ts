/** Seam continues: the gap across the seam equals the gaps between the groups. */
import { gapCount, type SolvingRule } from './rule.ts';

export const seamContinues: SolvingRule<'seam'> = {
  startFrom: () => ({ kind: 'seam' }),
  demandOf: () => ({
    margin: null,
    gap: null,
    distance(left, right, gaps) {
      if (!gaps) return 0;
      const acrossSeam = left + right;
      return Math.max(Math.abs(gaps.least - acrossSeam), Math.abs(gaps.most - acrossSeam));
    },
    ideal(frame) {
      const gap = frame.total / (gapCount(frame) + 1);
      return { margin: gap / 2, gap: gapCount(frame) > 0 ? gap : null };
    },
  }),
};
