/**
 * A work beside the least that could do it, both at their best.
 *
 * The two take turns, and each counts as its fastest round: what else the
 * machine does only ever makes a round slower.
 */
import type { Bar } from './bar.ts';
import { holdUp } from './slowed.ts';

export interface Compared {
  /** What is done, and the least that could do it. */
  readonly name: string;
  /** How many times as long it may take. */
  readonly limit: number;
  readonly rounds: number;
  /** Each gives a number of what it made, so that nothing is left out as unused. */
  readonly work: () => number | Promise<number>;
  readonly least: () => number | Promise<number>;
}

/** Milliseconds since some moment. */
export type Clock = () => number;

/** Time of the processor that this process took: what waits for others on a busy machine does not count. */
export const processorTime: Clock = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Time on the wall, for what other processes do. */
export const wallTime: Clock = () => performance.now();

export async function bestBar(
  { name, limit, rounds, work, least }: Compared,
  clock: Clock = processorTime,
): Promise<Bar> {
  const timed = async (done: () => number | Promise<number>, leastMs = 0): Promise<number> => {
    const start = clock();
    const made = await done();
    holdUp(limit, leastMs);
    const ms = clock() - start;
    if (Number.isNaN(made)) throw new Error('Nothing was made');
    return ms;
  };
  let ours = Infinity;
  let against = Infinity;
  for (let round = 0; round < rounds; round++) {
    against = Math.min(against, await timed(least));
    ours = Math.min(ours, await timed(work, against));
  }
  return { name, limit, kind: 'at most', ratio: ours / against, ours, against };
}
