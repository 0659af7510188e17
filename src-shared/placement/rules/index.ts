/** The placing rules, one a file. */
import type { PlacementRule, SolvedRule } from '../../pattern/index.ts';
import type { Spaces } from '../types.ts';
import { byHand } from './by-hand.ts';
import { evenSpaces } from './even.ts';
import { fixedGap } from './gaps.ts';
import { fixedMargins } from './margins.ts';
import type { Demand, SolvingRule } from './rule.ts';
import { seamContinues } from './seam.ts';

const rules: { readonly [Kind in SolvedRule['kind']]: SolvingRule<Kind> } = {
  seam: seamContinues,
  even: evenSpaces,
  margins: fixedMargins,
  gaps: fixedGap,
};

/** The rules from which needles are solved. */
export const SOLVED_KINDS = Object.keys(rules) as readonly SolvedRule['kind'][];

/** Every rule there is, in the order in which forms offer them. */
export const RULE_KINDS: readonly PlacementRule['kind'][] = [...SOLVED_KINDS, 'by-hand'];

/** What `rule` asks of the spaces. */
export function demandOf(rule: PlacementRule): Demand {
  return rule.kind === 'by-hand' ? byHand() : (rules[rule.kind] as SolvingRule<typeof rule.kind>).demandOf(rule);
}

/** The rule of a kind as it begins for groups that stand with these spaces, the margins net of the seam; null where none stand yet. */
export function startRule(kind: SolvedRule['kind'], spaces: Spaces | null): SolvedRule {
  return rules[kind].startFrom(spaces);
}

export { checkByHand } from './by-hand.ts';
export type { Demand, GapRange } from './rule.ts';
