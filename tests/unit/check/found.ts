/** What tests of findings have in common. */
import type { Slot } from '@shared/bed/index.ts';
import { findingsOf, remediesFor, type Finding, type FindingCode, type Remedy } from '@shared/check/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';

export interface CheckedPlan extends Plan {
  readonly findings: readonly Finding[];
}

/** The plan of a project, and what is found wrong with it. */
export function checkedPlan(project: ProjectAt): CheckedPlan {
  const plan = makePlan(pieceIn(project));
  return { ...plan, findings: findingsOf(pieceIn(project), plan) };
}

/** What can be done about it where its patterns stand. */
export function remediesOf(project: ProjectAt): Remedy[] {
  const plan = checkedPlan(project);
  return remediesFor(pieceIn(project), plan, plan.findings);
}

/** The findings of one code. */
export function onlyFindings<Code extends FindingCode>(
  { findings }: Pick<CheckedPlan, 'findings'>,
  code: Code,
): Extract<Finding, { code: Code }>[] {
  return findings.filter((finding): finding is Extract<Finding, { code: Code }> => finding.code === code);
}

/** Groups that stand on these first needles. */
export const byHand = (...first: number[]) => ({ rule: { kind: 'by-hand' as const, first: first as Slot[] } });
/** Five stitches, and mm do not count. */
export const FIVE = { floatLimit: { stitches: 5, mm: null } };

/** Two single columns of contrast with eight needles between them, on rows 2–4. */
export const TWO_COLUMNS = { motif: ['X', 'X', 'X'], copies: [1, 1], stitches: 20, rows: 5 };
export const COLUMNS = projectWith({ ...TWO_COLUMNS, piece: FIVE, band: byHand(-5, 4) });
