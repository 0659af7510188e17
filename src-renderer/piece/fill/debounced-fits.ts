/** Debounces the search for what would make a fill meet in the seam, which tries many widths. */
import { seamFits, type SeamFits } from '@shared/check/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';

const DEBOUNCE_MS = 150;

/** Calls `done` with what was found when nothing else was asked for in that time; returns a function that gives up. */
export function fitsDebounced(piece: KnitPiece, plan: Plan, fill: number, done: (fits: SeamFits) => void): () => void {
  const timer = setTimeout(() => done(seamFits(piece, plan, fill)), DEBOUNCE_MS);
  return () => clearTimeout(timer);
}
