export { Keeper, type TakenWork, type WorkToKeep } from './keeper.ts';
export * from './kept-work.ts';
export * from './window-identity.ts';
export * from './keeping-place.ts';
export { storedWork, type StoredWork } from './stored-work.ts';
