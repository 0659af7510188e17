export * from './commands.ts';
export * from './contract.ts';
export { isCollectedName, MOST_COLLECTED, MOST_COLLECTED_BYTES, MOST_LOOKED_AT } from './collection-contract.ts';
export { MOST_EVENTS } from './knitting-contract.ts';
export type * from './problems.ts';
export {
  LEAST_WINDOW,
  NO_LAST_FOLDERS,
  START_AIDS,
  START_WINDOW,
  type Aids,
  type LastFolders,
} from './settings-contract.ts';
