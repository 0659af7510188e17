/** Long work done a little at a time, so that others have a turn and it can be given up. */
import { problemOf, type Outcome } from '@shared/problem/index.ts';

/** Worked in one go before messages and events are let in; short beside a frame. */
const SLICE_MS = 12;

/**
 * What all steps come to, or why they did not; null if it was no longer wanted.
 * Of several that begin at once only those that are still wanted after a turn do.
 */
export async function inSlices<Progress, Answer>(
  begin: () => Iterator<Progress, Answer, void>,
  isWanted: () => boolean,
  progress: (now: Progress) => void,
): Promise<Outcome<Answer> | null> {
  await turn();
  if (!isWanted()) return null;
  try {
    const steps = begin();
    let since = performance.now();
    for (;;) {
      const step = steps.next();
      if (step.done) return { ok: true, value: step.value };
      if (performance.now() - since < SLICE_MS) continue;
      progress(step.value);
      await turn();
      if (!isWanted()) return null;
      since = performance.now();
    }
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown) };
  }
}

function turn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
