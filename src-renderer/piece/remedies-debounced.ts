/**
 * Remedies, kept up to date without holding up the hand: each is worked out by
 * planning the piece anew, and there is one for each band. Those of a large
 * piece come from the worker, once nothing was changed for a moment.
 */
import { remediesFor, type Remedy } from '@shared/check/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';
import { WorkerClient } from '../worker/index.ts';
import { remediesJob } from '../worker/jobs/remedies.ts';

/** Cells that are planned in a few milliseconds. */
const AT_ONCE = 50_000;
const DEBOUNCE_MS = 200;

const client = new WorkerClient('remedies', remediesJob);

/**
 * Calls `done` with the remedies, at once or when nothing was asked for in that
 * time, or `failed` where they cannot be had; returns a function that gives up.
 */
export function remediesDebounced(
  piece: KnitPiece,
  plan: Plan,
  done: (remedies: readonly Remedy[]) => void,
  failed: (problem: Problem) => void,
): () => void {
  // A ball for each group of a band, lining, and end needles off.
  const most = bandsOf(piece).length + 2;
  if (plan.fabric.cells.length * most <= AT_ONCE) {
    done(remediesFor(piece, plan));
    return () => undefined;
  }
  done([]);
  const timer = setTimeout(() => client.ask(piece, null, { answer: done, failed }), DEBOUNCE_MS);
  return () => {
    clearTimeout(timer);
    client.stop();
  };
}
