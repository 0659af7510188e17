/** Whether a rule can be met at all, said before anything is searched. */
import { widthOf } from '../bed/index.ts';
import { problemError } from '../problem/index.ts';
import type { Frame } from './frame.ts';
import type { Demand } from './rules/index.ts';
import type { PlacementQuestion } from './types.ts';

/**
 * Throws `groups-wider-than-piece` if the blocks do not fit side by side, and
 * `rule-cannot-be-met` if what the rule fixes is too narrow for the blank
 * columns that lie in it, too wide for the piece, or, for one group between
 * fixed margins, not all there is.
 */
export function requireRoom({ edges, groups }: PlacementQuestion, frame: Frame, demand: Demand): void {
  const stitches = widthOf(edges);
  const blocks = groups.reduce((sum, { width }) => sum + width, 0);
  if (blocks > stitches) {
    throw problemError('groups-wider-than-piece', { needed: blocks, available: stitches, stitches });
  }
  const margins = [frame.least[0] as number, frame.least[frame.least.length - 1] as number];
  const gaps = frame.least.slice(1, -1);
  const fixes = [
    { rule: 'margins' as const, given: demand.margin, fixed: margins, others: gaps },
    { rule: 'gaps' as const, given: demand.gap, fixed: gaps, others: margins },
  ];
  for (const { rule, given, fixed, others } of fixes) {
    if (given === null || fixed.length === 0) continue;
    const least = Math.max(...fixed);
    const spaces = given * fixed.length + others.reduce((sum, space) => sum + space, 0);
    // In stitches of the piece: what is not a judged space is a group or lies in the seam.
    const needed = stitches - frame.total + spaces;
    const hasNothingToGiveWay = others.length === 0 && needed !== stitches;
    if (given < least || needed > stitches || hasNothingToGiveWay) {
      throw problemError('rule-cannot-be-met', { rule, given, least, needed, available: stitches });
    }
  }
}
