/** The other end of `inWorker`: what a thread's script calls. */
import { parentPort, workerData } from 'node:worker_threads';
import { problemOf, type Outcome } from '@shared/problem/index.ts';
import type { FromThread } from './in-worker.ts';

/**
 * Does `job` with what was asked, and says how it ended; the job may say how
 * many steps of it are done. Buffers that the answer owns whole move without a copy.
 */
export async function answerOnce<Asked>(
  job: (asked: Asked, further: (steps: number) => void) => Promise<unknown>,
): Promise<void> {
  const port = parentPort;
  if (port === null) throw new Error('This script runs as a thread only');
  const say = (said: FromThread, transfer: ArrayBuffer[] = []): void => port.postMessage(said, transfer);
  say({ kind: 'began' });
  const outcome = await job(workerData as Asked, (steps) => say({ kind: 'further', steps })).then(
    (value): Outcome<unknown> => ({ ok: true, value }),
    (thrown: unknown): Outcome<unknown> => ({ ok: false, problem: problemOf(thrown) }),
  );
  say({ kind: 'ended', outcome }, outcome.ok ? [...buffersIn(outcome.value)] : []);
}

/** The buffers of typed arrays in plain objects and lists; one that others may look into stays. */
function buffersIn(value: unknown, found = new Set<ArrayBuffer>()): Set<ArrayBuffer> {
  if (ArrayBuffer.isView(value)) {
    const { buffer } = value;
    if (buffer instanceof ArrayBuffer && buffer.byteLength === value.byteLength) found.add(buffer);
  } else if (Array.isArray(value) || (typeof value === 'object' && value !== null)) {
    for (const part of Object.values(value)) buffersIn(part, found);
  }
  return found;
}
