/** Which option a problem of placing or planning comes from. */
import { ProblemError, at, type ProblemCode } from '@shared/problem/index.ts';
import type { CliOptionName } from '@shared/words/en/cli.ts';
import type { Args } from './args.ts';

/** The likeliest first. */
const options: Partial<Record<ProblemCode, readonly CliOptionName[]>> = {
  'needle-not-on-piece': ['rule', 'stitches'],
  'groups-overlap': ['rule'],
  'groups-out-of-order': ['rule'],
  'by-hand-count': ['rule', 'copies'],
  'rule-cannot-be-met': ['rule', 'copies', 'stitches'],
  'groups-wider-than-piece': ['copies', 'stitches', 'seam-allowance'],
  'choice-unknown': ['choice'],
  'motif-taller-than-section': ['hem', 'rows'],
  'all-over-taller-than-section': ['hem', 'rows'],
  'all-over-leaves-section': ['hem', 'rows'],
  'fill-rows-turned': ['hem', 'rows'],
  'rows-outside-piece': ['first-row', 'rows', 'hem'],
  'hem-longer-than-piece': ['hem', 'rows'],
};

/**
 * Runs `compute`; a problem without a place is put down to the option that
 * asked for what cannot be, or to the file if it asked.
 */
export function blaming<T>(args: Args, path: string, compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const option = options[error.problem.code]?.find((name) => args.values.has(name));
    throw at(option === undefined ? path : `--${option}`, error);
  }
}
