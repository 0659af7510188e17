/**
 * What went wrong, as data.
 *
 * Computation and services never make sentences: they throw a
 * {@link ProblemError} that carries a code, the place and the numbers.
 * `words/` turns it into what happened, where, and what to do about it.
 * A row more in a folder's `problems.ts` makes the compiler ask for its words.
 */
/**
 * The facts of each problem by its code. Each folder says those of its own in
 * its `problems.ts`; `words/en/problems/problem-words.ts` brings them together here. This
 * folder knows one alone: a bug of ours.
 */
export interface ProblemFacts {
  unexpected: { detail: string };
}

export type ProblemCode = keyof ProblemFacts;

/** One problem: its code, the place it is in (a file, a field, an option), and its numbers. */
export type Problem = {
  readonly [Code in ProblemCode]: {
    readonly code: Code;
    readonly where: string | null;
    readonly facts: ProblemFacts[Code];
  };
}[ProblemCode];

/** Thrown by computation and services; the message is the bare code, for logs. */
export class ProblemError extends Error {
  constructor(readonly problem: Problem) {
    super(problem.code);
    this.name = 'ProblemError';
  }
}

/** Makes the error for `code`; `where` names the file, field or option it is in. */
export function problemError<Code extends ProblemCode>(
  code: Code,
  facts: ProblemFacts[Code],
  where: string | null = null,
): ProblemError {
  return new ProblemError({ code, where, facts } as Problem);
}

/** The problem inside anything that was thrown; what is not ours becomes `unexpected`. */
export function problemOf(thrown: unknown): Problem {
  if (thrown instanceof ProblemError) return thrown.problem;
  const detail = thrown instanceof Error ? thrown.message : String(thrown);
  return { code: 'unexpected', where: null, facts: { detail } };
}

/** The same problem with its place named, if it has none yet. */
export function at(where: string, thrown: unknown): ProblemError {
  const problem = problemOf(thrown);
  return new ProblemError(problem.where === null ? ({ ...problem, where } as Problem) : problem);
}

/** Either a value or the problem that stood in its way. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** Runs `compute` and turns what it throws into an {@link Outcome}. Our own bugs still surface, as `unexpected`. */
export function outcome<T>(compute: () => T): Outcome<T> {
  try {
    return { ok: true, value: compute() };
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown) };
  }
}
