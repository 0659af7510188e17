/** The placing rules, one a file. */
import type { PlacementRule } from '../../project/project.ts';
import { byHand } from './by-hand.ts';
import { evenSpaces } from './even.ts';
import { fixedGap } from './gaps.ts';
import { fixedMargins } from './margins.ts';
import type { Demand } from './rule.ts';
import { seamContinues } from './seam.ts';

const rules: {
  readonly [Kind in PlacementRule['kind']]: (rule: Extract<PlacementRule, { kind: Kind }>) => Demand;
} = {
  seam: seamContinues,
  even: evenSpaces,
  margins: fixedMargins,
  gaps: fixedGap,
  'by-hand': byHand,
};

/** Every rule there is, in the order in which forms offer them. */
export const RULE_KINDS = Object.keys(rules) as readonly PlacementRule['kind'][];

/** What `rule` asks of the spaces. */
export function demandOf(rule: PlacementRule): Demand {
  return (rules[rule.kind] as (rule: PlacementRule) => Demand)(rule);
}

export { checkByHand } from './by-hand.ts';
export type { Demand, GapRange } from './rule.ts';
