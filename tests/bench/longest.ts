/** The longest that a page is busy with one thing, and so deaf to the hand. */
import type { Bar } from './bar.ts';
import type { Task } from './tasks.ts';

/**
 * Of several rounds the one with the shortest longest task counts, which a busy
 * machine has held up least. A figure follows: what that task's thread has worked,
 * the time left out in which the machine let it wait.
 */
export function longestBars(name: string, mostMs: number, rounds: readonly (readonly Task[])[]): Bar[] {
  const least = (of: 'ms' | 'workedMs'): number =>
    Math.min(...rounds.map((tasks) => Math.max(0, ...tasks.map((task) => task[of]))));
  const compared = (ms: number) => ({ ratio: ms / mostMs, ours: ms, against: mostMs });
  return [
    { name: `the longest task ${name}, against ${mostMs} ms`, kind: 'at most', limit: 1, ...compared(least('ms')) },
    {
      name: `what the longest task ${name} has worked, that it was let wait left out`,
      kind: 'figure',
      limit: null,
      ...compared(least('workedMs')),
    },
  ];
}
