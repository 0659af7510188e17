/** The sheet of a project, from its plans on: of the piece that is looked at, or of all. */
import {
  garmentParts,
  placementSheet,
  plannedPlaces,
  sheetFacts,
  type SheetOptions,
  type SheetPart,
} from '@shared/output/index.ts';
import { outcome, type Outcome } from '@shared/problem/index.ts';
import { LOOKED_AT, type ProjectAt, type Scope } from '@shared/project/index.ts';

/** The sheet in its parts, or what stands in its way: all pieces are planned before the first is laid out. */
export function sheetOf(
  project: ProjectAt,
  options: SheetOptions,
  scope: Scope = LOOKED_AT,
): Outcome<readonly SheetPart[]> {
  return outcome(() => {
    const planned = plannedPlaces(project, scope);
    const sizes = planned.map((places) => places.map(({ place, plan }) => ({ facts: sheetFacts(place), plan })));
    const [only, ...others] = sizes.flat();
    if (only && others.length === 0) return [() => placementSheet(only.facts, only.plan, options).pages];
    return sizes.flatMap((pieces) => garmentParts(pieces, options));
  });
}
