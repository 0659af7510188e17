/**
 * What is to be known before the first row, kept up to date without holding up
 * the hand: of a large piece it takes as long as its plan, and is worked out
 * once nothing was changed for a moment.
 */
import { findingsOf, type Finding } from '@shared/check/index.ts';
import { runningOrderOf, type Plan, type RunningOrder } from '@shared/plan/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';

export interface Lookahead {
  readonly piece: KnitPiece;
  readonly plan: Plan;
  /** Empty where it cannot be knitted. */
  readonly order: RunningOrder;
  readonly findings: readonly Finding[];
}

/** Cells of a piece of which all is known in a few milliseconds. */
const AT_ONCE = 40_000;
const DEBOUNCE_MS = 200;

/** Calls `done`, at once or when nothing was asked for in that time; returns a function that gives up. */
export function lookaheadDebounced(piece: KnitPiece, plan: Plan, done: (ahead: Lookahead) => void): () => void {
  const look = (): void => {
    const running = runningOrderOf(piece, plan);
    const order = running.isKnittable ? running.order : [];
    done({ piece, plan, order, findings: findingsOf(piece, plan) });
  };
  if (plan.fabric.cells.length <= AT_ONCE) {
    look();
    return () => undefined;
  }
  const timer = setTimeout(look, DEBOUNCE_MS);
  return () => clearTimeout(timer);
}
