export * from './types.ts';
export { RULE_KINDS } from './rules/index.ts';
export { solvePlacement } from './solve.ts';
