/**
 * What is to be known before the first row, kept up to date without holding up
 * the hand. Of a large piece running order and findings take as long as its
 * plan, and each remedy takes a plan of its own: they come from the worker,
 * once nothing was changed for a moment.
 */
import { findingsOf, remediesFor, type Remedy } from '@shared/check/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';
import { WorkerClient, type FoundAhead } from '../worker/index.ts';
import { foundAhead, lookaheadJob } from '../worker/jobs/lookahead.ts';

export interface Lookahead extends FoundAhead {
  readonly piece: KnitPiece;
  readonly plan: Plan;
  /** The most effective first; empty until they are worked out. */
  readonly remedies: readonly Remedy[];
}

/** Cells of a piece of which all but remedies is known in a few milliseconds. */
const AT_ONCE = 40_000;
/** Cells that are planned in a few milliseconds. */
const PLANNED_AT_ONCE = 50_000;
const DEBOUNCE_MS = 200;

const client = new WorkerClient('lookahead', lookaheadJob);

/**
 * Calls `done` with what is known at once, and when nothing was asked for in
 * that time with what is known by then, at last with the remedies; `failed`
 * where it cannot be had. Returns a function that gives up.
 */
export function lookaheadDebounced(
  piece: KnitPiece,
  plan: Plan,
  done: (ahead: Lookahead) => void,
  failed: (problem: Problem) => void,
): () => void {
  const cells = plan.fabric.cells.length;
  let found: FoundAhead | null = cells <= AT_ONCE ? foundAhead(piece, plan) : null;
  const tell = (remedies: readonly Remedy[]): void => {
    if (found) done({ ...found, piece, plan, remedies });
  };
  // A ball for each group of a band, lining, and end needles off.
  if (cells * (bandsOf(piece).length + 2) <= PLANNED_AT_ONCE) {
    tell(remediesFor(piece, plan, findingsOf(piece, plan)));
    return () => undefined;
  }
  tell([]);
  // What a message brings is shown in a task of its own: to take it in is work enough for one.
  const turns: ReturnType<typeof setTimeout>[] = [];
  const timer = setTimeout(() => {
    client.ask(piece, found ? 'remedies' : 'all', {
      part: (ahead) => {
        found = ahead;
        turns.push(setTimeout(() => tell([])));
      },
      answer: (remedies) => void turns.push(setTimeout(() => tell(remedies))),
      failed,
    });
  }, DEBOUNCE_MS);
  return () => {
    for (const turn of [timer, ...turns]) clearTimeout(turn);
    client.stop();
  };
}
