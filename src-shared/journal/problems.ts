/** What can be wrong with a journal of a piece on the needles. */
export interface JournalProblems {
  /** Nothing was begun that could be gone on with. */
  'journal-missing': Record<string, never>;
  'journal-not-ours': Record<string, never>;
  'journal-newer': { version: number; known: number };
  /** `line` from 1. */
  'journal-damaged': { line: number };
}
