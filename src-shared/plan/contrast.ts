/** What the contrast of a row comes to, counted once for all rows that share their runs. */
import { widthOf } from '../bed/index.ts';
import type { ContrastRun } from '../strands/index.ts';

export interface ContrastSum {
  readonly stitches: number;
  /** Palette indices, in the order of their first needles. */
  readonly yarns: readonly number[];
}

/** Rows that are alike have one list of runs between them (`layStrands`), and lists are never changed. */
const known = new WeakMap<readonly ContrastRun[], ContrastSum>();

export function contrastSum(contrast: readonly ContrastRun[]): ContrastSum {
  let sum = known.get(contrast);
  if (!sum) {
    const yarns: number[] = [];
    let stitches = 0;
    for (const run of contrast) {
      stitches += widthOf(run);
      if (!yarns.includes(run.yarn)) yarns.push(run.yarn);
    }
    sum = { stitches, yarns };
    known.set(contrast, sum);
  }
  return sum;
}
