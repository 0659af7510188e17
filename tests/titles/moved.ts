/** Tests that moved, are called something else or went since `titles.txt` was written, and why. */
import type { Moved } from './compare.ts';

export const MOVED: readonly Moved[] = [
  {
    old: 'unit/renderer-piece/carried-cells.test.ts',
    now: 'unit/renderer-piece/dragged-cells.test.ts',
    why: 'a group that the pointer moves is dragged; a carry is yarn',
  },
];
