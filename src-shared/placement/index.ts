export * from './types.ts';
export { clearOf } from './layout.ts';
export { judgeRound, seenRound, type RoundJudgement } from './round.ts';
export { countsThatFit, isExact, nearestExactWidths, type CountThatFits, type ExactWidth } from './suggestions.ts';
export { RULE_KINDS, SOLVED_KINDS, startRule } from './rules/index.ts';
export { sharesOf, type Share, type Shares } from './share.ts';
export { solvePlacement } from './solve.ts';
export type * from './problems.ts';
