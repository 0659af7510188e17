/** The window's side of a worker that decodes pictures: asked one thing at a time, and ended at its limit. */
import { problemError, ProblemError } from '@shared/problem/index.ts';
import type { Answers, Asked, FromWorker } from './messages.ts';

/** At most this long is worked on any picture. What it takes of memory is bounded by what is checked first. */
export const SECONDS = 5;

/** A worker, as far as it is used here. */
export type DecodingWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

/**
 * What the worker answers; it can be asked again then, and whoever has done with it ends it.
 * Throws what the worker threw, or `work-stopped` if it was ended at its limit; it is ended after either.
 */
export async function decodedWithin<Kind extends Asked['kind']>(
  worker: DecodingWorker,
  asked: Asked & { readonly kind: Kind },
  seconds: number = SECONDS,
): Promise<Answers[Kind]> {
  let deadline: ReturnType<typeof setTimeout> | undefined;
  const listening = new AbortController();
  const { signal } = listening;
  try {
    return await new Promise((resolve, reject) => {
      const hear = (event: Event): void => {
        const message = (event as MessageEvent<FromWorker>).data;
        if (message.kind === 'began') {
          deadline = setTimeout(
            () => reject(problemError('work-stopped', { work: 'picture', limit: 'time', amount: seconds })),
            seconds * 1000,
          );
        } else if (message.outcome.ok) resolve(message.outcome.value as Answers[Kind]);
        else reject(new ProblemError(message.outcome.problem));
      };
      const fail = (event: Event): void =>
        reject((event as ErrorEvent).error ?? new Error((event as ErrorEvent).message));
      worker.addEventListener('message', hear, { signal });
      worker.addEventListener('error', fail, { signal });
      // The bytes go over and are not copied.
      worker.postMessage(asked, [asked.bytes.buffer]);
    });
  } catch (thrown) {
    worker.terminate();
    throw thrown;
  } finally {
    clearTimeout(deadline);
    listening.abort();
  }
}
