export { Keeper, type KeptWork as WorkToKeep, type TakenWork } from './keeper.ts';
export * from './kept-work.ts';
export * from './window-identity.ts';
