/** What tests of findings have in common. */
import type { Slot } from '@shared/bed/index.ts';
import type { Plan } from '@shared/knitting/index.ts';
import type { Finding, FindingCode } from '@shared/strands/index.ts';

/** The findings of one code. */
export function onlyFindings<Code extends FindingCode>(plan: Plan, code: Code): Extract<Finding, { code: Code }>[] {
  return plan.findings.filter((finding): finding is Extract<Finding, { code: Code }> => finding.code === code);
}

/** Groups that stand on these first needles. */
export const byHand = (...first: number[]) => ({ rule: { kind: 'by-hand' as const, first: first as Slot[] } });
/** Five stitches, and mm do not count. */
export const FIVE = { floatLimit: { stitches: 5, mm: null } };
