/** Where a piece stands on the bed. */
import type { Run, Side, Slot } from '../bed/index.ts';

export interface Standing {
  /** On which side of the centre the extra stitch of an odd piece stands. */
  readonly oddStitch: Side;
  /** Needles to the right of the centred position (negative: to the left). */
  readonly offset: number;
}

/** Where a piece stands, and the folded hem that it begins with. */
export interface Footing extends Standing {
  /** 0 without a hem. */
  readonly hemRows: number;
}

/** The needles of a row of `stitches`: L60 … R60 for 120 without an offset. */
export function edgesOf(stitches: number, standing: Standing): Run {
  const leftOfCentre = standing.oddStitch === 'left' ? Math.ceil(stitches / 2) : Math.floor(stitches / 2);
  const first = standing.offset - leftOfCentre;
  return { first: first as Slot, last: (first + stitches - 1) as Slot };
}
