/**
 * Debounces the remedies of a large piece: each is worked out by planning the
 * piece anew.
 */
import { remediesFor, type Remedy } from '@shared/check/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';

/** Cells of a piece whose remedies take no more than a few milliseconds. */
const AT_ONCE = 40_000;
const DEBOUNCE_MS = 200;

/** Calls `done` with the remedies, at once or when nothing was asked for in that time; returns a function that gives up. */
export function remediesDebounced(
  piece: KnitPiece,
  plan: Plan,
  done: (remedies: readonly Remedy[]) => void,
): () => void {
  if (plan.fabric.cells.length <= AT_ONCE) {
    done(remediesFor(piece, plan));
    return () => undefined;
  }
  done([]);
  const timer = setTimeout(() => done(remediesFor(piece, plan)), DEBOUNCE_MS);
  return () => clearTimeout(timer);
}
