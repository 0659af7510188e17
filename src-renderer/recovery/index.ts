export { Keeper, type TakenWork } from './keeper.ts';
export * from './kept-work.ts';
export * from './window-identity.ts';
export * from './keeping-place.ts';
export { storedWork, type StoredWork, type WorkToKeep } from './stored-work.ts';
