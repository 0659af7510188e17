/**
 * Remedies are worked out by planning the piece anew for each, so on a large
 * piece they wait until the hand rests.
 */
import { remediesFor, type Plan, type Remedy } from '@shared/knitting/index.ts';
import type { Project } from '@shared/project/index.ts';

/** Cells of a piece whose remedies take no more than a few milliseconds. */
const AT_ONCE = 40_000;
const REST_MS = 200;

/** Calls `done` with the remedies, at once or when nothing was asked for a while; returns a function that gives up. */
export function remediesAtRest(project: Project, plan: Plan, done: (remedies: readonly Remedy[]) => void): () => void {
  if (plan.fabric.cells.length <= AT_ONCE) {
    done(remediesFor(project, plan));
    return () => undefined;
  }
  done([]);
  const timer = setTimeout(() => done(remediesFor(project, plan)), REST_MS);
  return () => clearTimeout(timer);
}
