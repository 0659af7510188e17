/** Random cases are the same in each run, so that a mutant is not killed by luck; the first one that fails is enough. */
import fc from 'fast-check';

fc.configureGlobal({ seed: 20_240_229, endOnFailure: true });
