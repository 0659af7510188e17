/**
 * Imports between folders that lie on a circle today. None may come, and one
 * that is gone is deleted here: the list ends empty.
 */
import type { Arrow } from './circles.ts';

export const KNOWN_ON_CIRCLES: readonly Arrow[] = [];
