/** Feeds a reader spoiled inputs: what comes back is a good value or a problem that can be said, in little time and memory. */
import { ProblemError, type Problem } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { diceOf } from './random.ts';
import { REFUSED, type Reader } from './reader.ts';

/** For one input: what is refused takes no longer, and what is taken by these small ones neither. */
const MOST_SECONDS = 3;
/** Over all inputs of a reader, beyond what the process had after the first hundred. */
const MOST_MEGABYTES = 200;

export interface Counts {
  readonly read: number;
  readonly refused: number;
  /** How often each problem was met. */
  readonly problems: ReadonlyMap<string, number>;
  readonly longestMs: number;
  readonly grownMb: number;
}

/** Thrown with what is needed to see it again. */
export class Found extends Error {}

/** The input of that number: every one can be made by itself. */
export function inputOf(reader: Reader, seed: number, index: number): Uint8Array {
  return reader.spoiled(diceOf(seed * 1_000_003 + index));
}

export async function fuzz(reader: Reader, seed: number, count: number): Promise<Counts> {
  let read = 0;
  let longestMs = 0;
  let before = 0;
  const problems = new Map<string, number>();
  for (let index = 0; index < count; index++) {
    const input = inputOf(reader, seed, index);
    const used = process.cpuUsage();
    try {
      if ((await reader.read(input)) !== REFUSED) read++;
    } catch (thrown) {
      if (!(thrown instanceof ProblemError) || !canBeSaid(thrown.problem)) {
        throw new Found(
          `${reader.name}: seed ${seed}, input ${index} of ${input.length} bytes: ${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}`,
        );
      }
      const { code } = thrown.problem;
      problems.set(code, (problems.get(code) ?? 0) + 1);
    }
    const { user, system } = process.cpuUsage(used);
    longestMs = Math.max(longestMs, (user + system) / 1000);
    if (longestMs > MOST_SECONDS * 1000)
      throw new Found(`${reader.name}: seed ${seed}, input ${index} took ${longestMs.toFixed(0)} ms`);
    if (index === Math.min(100, count - 1)) before = process.resourceUsage().maxRSS;
    if (index > 100 && megabytes(before) > MOST_MEGABYTES)
      throw new Found(`${reader.name}: seed ${seed}, input ${index} took ${megabytes(before).toFixed(0)} MB`);
  }
  return { read, refused: count - read, problems, longestMs, grownMb: megabytes(before) };
}

function canBeSaid(problem: Problem): boolean {
  return problem.code !== 'unexpected' && words.problems.sentence(problem) !== '';
}

/** By which the most that this process ever held has grown. */
function megabytes(before: number): number {
  return (process.resourceUsage().maxRSS - before) / 1024;
}
