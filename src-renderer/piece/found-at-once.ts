/** What is to be known before the first row of a piece that is no larger than most are: in the window, without a worker. */
import type { Plan } from '@shared/plan/index.ts';
import { pieceIn, type KnitPiece, type ProjectAt } from '@shared/project/index.ts';
import type { FoundAhead } from '../worker/index.ts';
import { foundAhead, foundInSteps } from '../worker/jobs/lookahead.ts';
import { plannedOf } from './planned.ts';

/** Cells of a piece of which all but remedies is known in a few milliseconds. */
const AT_ONCE = 40_000;

const kept = new WeakMap<KnitPiece, FoundAhead>();

/** Null for a larger one. `plan` is that of `piece`. */
export function foundAtOnce(piece: KnitPiece, plan: Plan): FoundAhead | null {
  if (plan.fabric.cells.length > AT_ONCE) return null;
  const found = kept.get(piece) ?? foundAhead(piece, plan);
  kept.set(piece, found);
  return found;
}

/**
 * Works out the plan of the piece that is looked at, and what is found on it,
 * for the bench to have both when it is gone to: the first time they take as
 * long as all that it shows. Each step is short. Nothing of a larger piece.
 */
export function* prepareFound(project: ProjectAt): Generator<null, void, void> {
  const { stitches, rows } = project.piece.shape;
  if (stitches * rows > AT_ONCE) return;
  const piece = pieceIn(project);
  const { plan, problem } = plannedOf(project);
  yield null;
  if (!problem && !kept.has(piece)) kept.set(piece, yield* foundInSteps(piece, plan));
}
