/** What went wrong, and what to do about it. */
import type { Problem } from '../../../problem/index.ts';
import { calls } from './calls.ts';
import { files } from './files.ts';
import { knitting } from './knitting.ts';
import { pictures } from './pictures.ts';
import { placing } from './placing.ts';
import { projects } from './projects.ts';
import { shaping } from './shaping.ts';
import type { ProblemWords, ProblemText } from './problem-words.ts';

const byCode: ProblemWords = { ...placing, ...shaping, ...calls, ...pictures, ...projects, ...knitting, ...files };

function say(problem: Problem): ProblemText {
  return (byCode[problem.code] as (facts: Problem['facts']) => ProblemText)(problem.facts);
}

export const problems = {
  say,
  /** One paragraph: where, what, what to do. */
  sentence(problem: Problem): string {
    const { what, mend } = say(problem);
    const place = problem.where === null || what.startsWith(problem.where) ? '' : `${problem.where}: `;
    return `${place}${what} ${mend}`;
  },
};
