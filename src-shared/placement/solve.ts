/** Where the groups go: the ranked choices for one row of groups. */
import { type Slot, widthOf } from '../bed/index.ts';
import { firstNeedles, frameOf, type Frame } from './frame.ts';
import { layOut } from './layout.ts';
import { behindBy, scoreOf } from './order.ts';
import { checkByHand, demandOf, type Demand } from './rules/index.ts';
import { bestSpaces } from './search/search.ts';
import type { FirstNeedles, PlacementChoice, PlacementQuestion, Reason } from './types.ts';
import { problemError } from '../problem/index.ts';

/**
 * The best `most` placements, best first; fewer if there are no more, none
 * without groups. By hand there is one, the given. The order is that of
 * order.ts, and exact: no placement left out ranks before one returned.
 *
 * Every block lies on the piece and no two overlap. Nothing else is held
 * against a placement: a margin may be narrower than the seam allowance, so
 * that part of the figure goes into the seam.
 *
 * Throws `groups-wider-than-piece`, `rule-cannot-be-met`; by hand
 * `by-hand-count`, `needle-not-on-piece`, `groups-overlap`,
 * `groups-out-of-order`.
 */
export function solvePlacement(question: PlacementQuestion, most = 8): PlacementChoice[] {
  if (question.groups.length === 0) return [];
  const { rule } = question;
  if (rule.kind === 'by-hand') {
    checkByHand(question.edges, question.groups, rule.first);
    return choicesOf(question, [rule.first]);
  }
  const frame = frameOf(question);
  const demand = demandOf(rule);
  requireRoom(question, frame, demand);
  const found = bestSpaces(frame, demand, most);
  return choicesOf(
    question,
    found.map((spaces): readonly Slot[] => firstNeedles(question, frame, spaces)),
  );
}

/** Ranked placements with their figures and reasons. Scores come from the needles, not from the search. */
function choicesOf(question: PlacementQuestion, ranked: readonly FirstNeedles[]): PlacementChoice[] {
  const { rule, judge } = question;
  const demand = demandOf(rule);
  const ideal = demand.ideal(frameOf(question));
  const laid = ranked.map((first) => {
    const layout = layOut(question, first);
    return { layout, score: scoreOf(layout.judged, demand) };
  });
  const [best] = laid;
  return laid.map(({ layout: { groups, blocks, figure }, score }, rank) => {
    const { imbalance, fromRule, margins } = score;
    const reason: Reason = {
      rule: rule.kind,
      judge,
      rank,
      imbalance,
      fromRule,
      ideal,
      seamAllowance: question.seamAllowance,
      behindBy: rank > 0 && best ? behindBy(best.score, score) : null,
    };
    return { groups, blocks, figure, acrossSeam: margins, imbalance, fromRule, reason };
  });
}

/**
 * Throws `groups-wider-than-piece` if the blocks do not fit side by side, and
 * `rule-cannot-be-met` if what the rule fixes is too narrow for the blank
 * columns that lie in it, too wide for the piece, or, for one group between
 * fixed margins, not all there is.
 */
function requireRoom({ edges, groups }: PlacementQuestion, frame: Frame, demand: Demand): void {
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
