export * from './contract.ts';
export type * from './problems.ts';
