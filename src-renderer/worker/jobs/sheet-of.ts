/** The sheet of a project, from its plan on. */
import { placementSheet, sheetFacts, type SheetDocument, type SheetOptions } from '@shared/output/index.ts';
import { planFor } from '@shared/plan/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';

/** The sheet, or what stands in its way. */
export function sheetOf(project: ProjectAt, options: SheetOptions): Outcome<SheetDocument> {
  const plan = planFor(pieceIn(project));
  if (!plan.ok) return plan;
  return { ok: true, value: placementSheet(sheetFacts(project), plan.value, options) };
}
