/** The figure of a row, apart from what only binds the contrast in. */
import type { Slot } from '../bed/index.ts';
import type { ContrastRun } from '../strands/index.ts';
import type { PlanRow } from './types.ts';

/** The needles of a row that knit figure: its contrast without the edge needles of end-needle selection. */
export function figureRuns({ contrast, endNeedles }: Pick<PlanRow, 'contrast' | 'endNeedles'>): readonly ContrastRun[] {
  if (!endNeedles) return contrast;
  const isBinding = (needle: Slot): boolean => endNeedles.needles.includes(needle);
  return contrast.flatMap((run) => {
    const first = (isBinding(run.first) ? run.first + 1 : run.first) as Slot;
    const last = (isBinding(run.last) ? run.last - 1 : run.last) as Slot;
    return first > last ? [] : [{ ...run, first, last }];
  });
}
