/** What came back from the other side, or why nothing did. */
import type { Outcome } from '@shared/problem/index.ts';

export const UNREACHABLE: Outcome<never> = {
  ok: false,
  problem: { code: 'host-unreachable', where: null, facts: {} },
};

/** True for what both shells answer. What is inside was checked before it was sent. */
export function isOutcome(answer: unknown): answer is Outcome<unknown> {
  return typeof answer === 'object' && answer !== null && typeof (answer as { ok?: unknown }).ok === 'boolean';
}
