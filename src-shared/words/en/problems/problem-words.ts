/** What is said of each problem. */
import type { ProblemCode, ProblemFacts } from '../../../problem/index.ts';
import type {} from '../../problem-facts.ts';

/** `what` happened and how to `mend` it. */
export interface ProblemText {
  readonly what: string;
  readonly mend: string;
}

/** The words of every problem there is. */
export type ProblemWords = { readonly [Code in ProblemCode]: (facts: ProblemFacts[Code]) => ProblemText };
