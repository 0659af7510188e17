/** Shaping as a knitter reads it: how many stitches at each edge, every how many rows, how often. */
import type { Outline } from './shape.ts';

/** `stitches` more at each edge (negative: fewer) every `every` rows, `times` times. */
export interface ShapingStep {
  readonly stitches: number;
  readonly every: number;
  readonly times: number;
}

/**
 * The steps that shape both edges alike, bottom to top. Rows on which only one
 * edge moves (the odd stitch of an uneven difference) are left out.
 */
export function scheduleOf(outline: Outline): ShapingStep[] {
  const steps: { stitches: number; every: number; times: number }[] = [];
  let changedAt = 0;
  for (let row = 1; row < outline.rows; row++) {
    const left = (outline.first[row - 1] as number) - (outline.first[row] as number);
    const right = (outline.last[row] as number) - (outline.last[row - 1] as number);
    if (left !== right || left === 0) continue;
    const every = row + 1 - changedAt;
    const step = steps.at(-1);
    if (step?.every === every && step.stitches === left) step.times++;
    else steps.push({ stitches: left, every, times: 1 });
    changedAt = row + 1;
  }
  return steps;
}
