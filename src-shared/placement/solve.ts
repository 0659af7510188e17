/** Where the groups go: the ranked choices for one row of groups. */
import type { Slot } from '../bed/index.ts';
import { firstNeedles, frameOf } from './frame.ts';
import { layOut } from './layout.ts';
import { behindBy, scoreOf } from './order.ts';
import { requireRoom } from './room.ts';
import { checkByHand, demandOf } from './rules/index.ts';
import { bestSpaces } from './search/search.ts';
import type { FirstNeedles, PlacementChoice, PlacementQuestion, Reason } from './types.ts';

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
