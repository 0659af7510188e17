/** The window's side of the worker that decodes pictures: one worker a picture, ended with its answer or at its limit. */
import { problemError, ProblemError } from '@shared/problem/index.ts';
import type { Answers, Asked, FromWorker } from './messages.ts';

/** At most this long is worked on any picture. What it takes of memory is bounded by what is checked first. */
export const SECONDS = 5;

/** A worker, as far as it is used here. */
export type DecodingWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

/** Throws what the worker threw, or `work-stopped` if it was ended at its limit. */
export async function decodedWithin<Kind extends Asked['kind']>(
  worker: DecodingWorker,
  asked: Asked & { readonly kind: Kind },
  seconds: number = SECONDS,
): Promise<Answers[Kind]> {
  let deadline: ReturnType<typeof setTimeout> | undefined;
  try {
    return await new Promise((resolve, reject) => {
      worker.addEventListener('message', (event) => {
        const message = (event as MessageEvent<FromWorker>).data;
        if (message.kind === 'began') {
          deadline = setTimeout(
            () => reject(problemError('work-stopped', { work: 'picture', limit: 'time', amount: seconds })),
            seconds * 1000,
          );
        } else if (message.outcome.ok) resolve(message.outcome.value as Answers[Kind]);
        else reject(new ProblemError(message.outcome.problem));
      });
      worker.addEventListener('error', (event) =>
        reject((event as ErrorEvent).error ?? new Error((event as ErrorEvent).message)),
      );
      // The bytes go over and are not copied.
      worker.postMessage(asked, [asked.bytes.buffer]);
    });
  } finally {
    clearTimeout(deadline);
    worker.terminate();
  }
}
