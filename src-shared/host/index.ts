export * from './commands.ts';
export * from './contract.ts';
export type * from './problems.ts';
