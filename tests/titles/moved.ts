/** Tests that moved, are called something else or went since `titles.txt` was written, and why. */
import type { Moved } from './compare.ts';

export const MOVED: readonly Moved[] = [];
