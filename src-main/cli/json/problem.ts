/** The JSON of an error. */
import type { Problem } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';

export interface ProblemJson {
  readonly error: {
    readonly code: string;
    /** What happened and what to do about it. */
    readonly message: string;
    /** The file or option it is in, or null. */
    readonly where: string | null;
  };
}

export function problemJson(problem: Problem): ProblemJson {
  const { what, mend } = words.problems.say(problem);
  return { error: { code: problem.code, message: `${what} ${mend}`, where: problem.where } };
}
