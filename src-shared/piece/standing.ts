/** Where a piece stands on the bed. */
import type { Run, Slot } from '../bed/index.ts';
import type { Piece } from './model.ts';

export interface Standing extends Pick<Piece, 'oddStitch' | 'offset'> {}

/** Where a piece stands, and the folded hem that it begins with. */
export interface Footing extends Standing, Pick<Piece, 'hemRows'> {}

/** The needles of a row of `stitches`: L60 … R60 for 120 without an offset. */
export function edgesOf(stitches: number, standing: Standing): Run {
  const leftOfCentre = standing.oddStitch === 'left' ? Math.ceil(stitches / 2) : Math.floor(stitches / 2);
  const first = standing.offset - leftOfCentre;
  return { first: first as Slot, last: (first + stitches - 1) as Slot };
}
