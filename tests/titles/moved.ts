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
  {
    old: 'unit/renderer-shell/keeper.test.ts',
    now: 'unit/renderer-recovery/keeper.test.ts',
    why: 'the keeping of unsaved work has a folder of its own',
  },
  {
    old: 'unit/renderer-shell/keeping-place.test.ts',
    now: 'unit/renderer-recovery/keeping-place.test.ts',
    why: 'the keeping of unsaved work has a folder of its own',
  },
  {
    old: 'unit/renderer-shell/window-identity.test.ts',
    now: 'unit/renderer-recovery/window-identity.test.ts',
    why: 'the keeping of unsaved work has a folder of its own',
  },
  {
    old: 'unit/renderer-shell/leaving.test.ts',
    now: 'unit/renderer-files/leaving.test.ts',
    why: 'opening and saving have a folder of their own',
  },
  {
    old: 'unit/renderer-reading-in/decoding-limit.test.ts',
    now: 'unit/renderer-pictures/decoding-limit.test.ts',
    why: 'picture files are read in a folder of their own',
  },
  {
    old: "unit/layers.test.ts › the layers are held by lint › 'src-renderer/shell/x.ts' may not hold: 'import { a } from \\'../../src-main/se…'",
    now: "unit/layers.test.ts › the layers are held by lint › 'src-renderer/window/x.ts' may not hold: 'import { a } from \\'../../src-main/se…'",
    why: 'there is no folder of that name in the renderer any more',
  },
  {
    old: "unit/layers.test.ts › the layers are held by lint › 'src-renderer/shell/x.ts' may not hold: 'import { shell } from \\'electron\\';'",
    now: "unit/layers.test.ts › the layers are held by lint › 'src-renderer/window/x.ts' may not hold: 'import { shell } from \\'electron\\';'",
    why: 'there is no folder of that name in the renderer any more',
  },
];
