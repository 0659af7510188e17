/** What came back from the other side, or why nothing did. */
import { MOST_CALL_BYTES } from '@shared/host/sealed/index.ts';
import type { Outcome } from '@shared/problem/index.ts';

export const UNREACHABLE: Outcome<never> = {
  ok: false,
  problem: { code: 'host-unreachable', where: null, facts: {} },
};

/** For a call that no host would read. */
export function tooLarge(bytes: number): Outcome<never> {
  return { ok: false, problem: { code: 'file-too-large', where: null, facts: { bytes, most: MOST_CALL_BYTES } } };
}

/** True for what both shells answer. What is inside was checked before it was sent. */
export function isOutcome(answer: unknown): answer is Outcome<unknown> {
  return typeof answer === 'object' && answer !== null && typeof (answer as { ok?: unknown }).ok === 'boolean';
}
