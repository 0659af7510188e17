export * from './model.ts';
export {
  beginningLine,
  entryLine,
  journalContinued,
  journalFromText,
  JOURNAL_VERSION,
  type Check,
  type Journal,
  type Rest,
} from './file.ts';
export type * from './problems.ts';
