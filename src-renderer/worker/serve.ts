/** The worker's side: opens what it is given, and works on the latest question between messages. */
import { problemOf } from '@shared/problem/index.ts';
import { inSlices } from './in-slices.ts';
import type { Job, JobName } from './jobs/table.ts';
import type { FromWorker, ToWorker } from './messages.ts';

/** What is needed of a worker's global scope. */
export interface Port {
  postMessage(message: FromWorker): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<ToWorker>) => void): void;
}

/** Answers what is asked at `port`, one question at a time: the latest. */
export function serve(jobs: { readonly [Name in JobName]: Job<Name> }, port: Port): void {
  let wanted: number | null = null;
  let held: { given: unknown; opened: ReturnType<Job<JobName>> | null } = { given: null, opened: null };

  const work = async ({ id, job, ask }: ToWorker & { kind: 'ask' }): Promise<void> => {
    const isWanted = (): boolean => wanted === id;
    const begin = (): ReturnType<ReturnType<Job<JobName>>> => {
      if (!held.opened) {
        held.opened = (jobs[job] as (given: unknown) => ReturnType<Job<JobName>>)(held.given);
        // What was made of it is enough.
        held.given = null;
        port.postMessage({ kind: 'opened', id });
      }
      return held.opened(ask as never, (part) => port.postMessage({ kind: 'part', id, part }));
    };
    const outcome = await inSlices(begin, isWanted, (progress) => port.postMessage({ kind: 'progress', id, progress }));
    port.postMessage({ kind: 'ended', id, outcome });
  };

  port.addEventListener('message', ({ data }) => {
    if (data.kind === 'stop') {
      if (wanted === data.id) wanted = null;
      return;
    }
    wanted = data.id;
    if (data.given) held = { given: data.given.value, opened: null };
    const { id } = data;
    // An answer that cannot be sent.
    work(data).catch((thrown: unknown) =>
      port.postMessage({ kind: 'ended', id, outcome: { ok: false, problem: problemOf(thrown) } }),
    );
  });
}
