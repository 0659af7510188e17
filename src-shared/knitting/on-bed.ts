/** Whether a piece stands on the needles that there are. */
import { label, widthOf, type Run, type Slot } from '../bed/index.ts';
import { edgesAt, type Outline } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import type { Bed } from '../project/project.ts';

/** The needles of a bed of `needles`: half on each side of the centre, the odd one on the right. */
export function needlesOf(needles: number): Run {
  const left = Math.floor(needles / 2);
  return { first: -left as Slot, last: (needles - left - 1) as Slot };
}

/** Throws `off-the-bed` with the widest row that leaves the bed. A bed of unknown length holds everything. */
export function assertOnBed(outline: Outline, bed: Bed): void {
  if (bed.needles === null) return;
  const there = needlesOf(bed.needles);
  let widest: Run | null = null;
  for (let row = 1; row <= outline.rows; row++) {
    const edges = edgesAt(outline, row);
    const isOn = edges.first >= there.first && edges.last <= there.last;
    if (!isOn && (widest === null || widthOf(edges) > widthOf(widest))) widest = edges;
  }
  if (widest === null) return;
  throw problemError('off-the-bed', {
    stitches: widthOf(widest),
    first: label(widest.first),
    last: label(widest.last),
    needles: bed.needles,
  });
}
