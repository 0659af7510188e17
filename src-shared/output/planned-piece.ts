/** Pieces with their plans, ready to be printed. */
import { planFor, type Plan } from '../plan/index.ts';
import { at, ProblemError } from '../problem/index.ts';
import { pieceIn, placesIn, sizeName, type ProjectAt, type Scope } from '../project/index.ts';
import { words } from '../words/index.ts';
import type { SheetFacts } from './sheet-facts.ts';

/** A piece with all that its sheet says. */
export interface PlannedPiece {
  readonly facts: SheetFacts;
  /** The plan of the piece of `facts`. */
  readonly plan: Plan;
}

/** The project at a piece in a size, with the plan of that. */
export interface PlannedPlace {
  readonly place: ProjectAt;
  readonly plan: Plan;
}

/**
 * Every piece of the scope, size by size, in each in their order. Throws what
 * stands in the way of a plan, where there are several with which it is.
 */
export function plannedPlaces(project: ProjectAt, scope: Scope): readonly (readonly PlannedPlace[])[] {
  const sizes = placesIn(project, scope);
  const plan = sizes.flat().length === 1 ? planned : plannedPlace;
  return sizes.map((places) => places.map(plan));
}

/** One of several. Throws what stands in the way of its plan, with which it is. */
export function plannedPlace(place: ProjectAt): PlannedPlace {
  try {
    return planned(place);
  } catch (thrown) {
    throw at(words.knitting.piece(place.piece, sizeName(place)), thrown);
  }
}

function planned(place: ProjectAt): PlannedPlace {
  const plan = planFor(pieceIn(place));
  if (!plan.ok) throw new ProblemError(plan.problem);
  return { place, plan: plan.value };
}
