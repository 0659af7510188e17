export * from './commands.ts';
export * from './contract.ts';
export type * from './problems.ts';
export { LEAST_WINDOW, START_WINDOW } from './settings-contract.ts';
