/**
 * Work that is long, or that a stranger's file decides the length of, in a
 * thread of its own: the event loop stays free, and at its limit the thread is
 * ended, whatever it is doing.
 */
import { Worker } from 'node:worker_threads';
import type { LimitedWork } from '@shared/host/index.ts';
import { problemError, ProblemError, type Outcome } from '@shared/problem/index.ts';
import { threadAt, type ThreadEntry } from './thread-entry.ts';

/** What a job may take at most. */
export interface Limit {
  /** What is being done, for the words of the problem. */
  readonly work: LimitedWork;
  /**
   * From the moment at which the thread begins to work; starting it does not
   * count, nor does time in which a busy machine lets it wait, up to
   * {@link MOST_WAITING} times as much.
   */
  readonly seconds: number;
  /**
   * What the process may grow by meanwhile. Watched from outside, since V8's own
   * limit for a thread (set as well) does not count the bytes of typed arrays.
   */
  readonly megabytes: number;
}

/** What a thread says: once that it begins, whenever it comes further, once how it ended. */
export type FromThread =
  | { readonly kind: 'began' }
  | { readonly kind: 'further'; readonly steps: number }
  | { readonly kind: 'ended'; readonly outcome: Outcome<unknown> };

/** Who waits for a thread. */
export interface Waiting {
  /** Told how many steps of its work are done. */
  readonly further?: (steps: number) => void;
  /** Ends the thread when it is aborted; what is thrown is the reason of that. */
  readonly signal?: AbortSignal;
}

/** Milliseconds between two looks at the memory; a thread can touch some 50 MB meanwhile. */
const LOOK_EVERY = 20;

/** A thread that works a fifth of the time at least is waited for; one that stands still is not. */
const MOST_WAITING = 5;

const MEGABYTE = 1024 * 1024;

/**
 * Starts the thread, gives it `asked`, and answers with what it made. Buffers
 * in `transfer` move to it without being copied and are gone here.
 *
 * Throws the problem that the job threw, `work-stopped` if it was ended at its
 * limit, or the reason of the signal that ended it.
 */
export async function inWorker(
  entry: ThreadEntry,
  asked: unknown,
  limit: Limit,
  transfer: readonly ArrayBuffer[] = [],
  { further, signal }: Waiting = {},
): Promise<unknown> {
  signal?.throwIfAborted();
  const { file, argv } = threadAt(entry);
  const worker = new Worker(file, {
    argv: [...argv],
    // Options of this process, such as a loader, are not the thread's.
    execArgv: [],
    workerData: asked,
    transferList: [...transfer],
    resourceLimits: { maxOldGenerationSizeMb: limit.megabytes },
  });
  const before = process.memoryUsage.rss();
  const stopped = (reached: 'time' | 'memory'): ProblemError =>
    problemError('work-stopped', {
      work: limit.work,
      limit: reached,
      amount: reached === 'time' ? limit.seconds : limit.megabytes,
    });
  let watch: NodeJS.Timeout | undefined;
  let stop: (() => void) | undefined;
  try {
    return await new Promise<unknown>((resolve, reject) => {
      stop = () => reject(signal?.reason as Error);
      signal?.addEventListener('abort', stop);
      let isOver: () => boolean = () => false;
      watch = setInterval(() => {
        if (process.memoryUsage.rss() - before > limit.megabytes * MEGABYTE) reject(stopped('memory'));
        else if (isOver()) reject(stopped('time'));
      }, LOOK_EVERY);
      worker.on('message', (said: FromThread) => {
        if (said.kind === 'began') isOver = deadline(limit.seconds);
        else if (said.kind === 'further') further?.(said.steps);
        else if (said.outcome.ok) resolve(said.outcome.value);
        else reject(new ProblemError(said.outcome.problem));
      });
      worker.on('error', (error: NodeJS.ErrnoException) =>
        reject(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? stopped('memory') : error),
      );
      worker.on('exit', () => reject(new Error('The thread ended without an answer')));
    });
  } finally {
    clearInterval(watch);
    if (stop) signal?.removeEventListener('abort', stop);
    await worker.terminate();
  }
}

/** From now on: true once that many seconds have been worked, by this whole process. */
function deadline(seconds: number): () => boolean {
  const began = performance.now();
  const used = process.cpuUsage();
  return () => {
    const passed = (performance.now() - began) / 1000;
    if (passed < seconds) return false;
    const { user, system } = process.cpuUsage(used);
    return (user + system) / 1e6 >= seconds || passed >= seconds * MOST_WAITING;
  };
}
