/** Tests that moved, are called something else or went since `titles.txt` was written, and why. */
import type { Moved } from './compare.ts';

export const MOVED: readonly Moved[] = [
  {
    old: 'unit/renderer-piece/carried-cells.test.ts',
    now: 'unit/renderer-piece/dragged-cells.test.ts',
    why: 'a group that the pointer moves is dragged; a carry is yarn',
  },
  {
    old: 'unit/renderer-motif/cursor-voice.test.ts',
    now: 'unit/renderer-session/announcer.test.ts',
    why: 'the stages of the piece announce in the same way',
  },
  {
    old: 'unit/placement/better.test.ts',
    now: 'unit/placement/suggestions.test.ts',
    why: 'what would fit better is a suggestion',
  },
  {
    old: 'unit/project/history.test.ts › a gesture › cannot go on as another kind of change',
    now: 'unit/project/history.test.ts › a gesture › may go on with another kind of change, and is one step all the same',
    why: 'a change is a list of edits, of whatever kinds',
  },
];
