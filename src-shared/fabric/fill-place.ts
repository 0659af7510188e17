/** Where the copies of a placed fill lie. */
import type { Run, Slot } from '../bed/index.ts';
import { edgesAt, type Outline } from '../piece/index.ts';
import type { FillPlace } from './types.ts';

/** The needles of a row of the fill that its border leaves, or null if it leaves none. */
export function fillRun({ border }: Pick<FillPlace, 'border'>, outline: Outline, row: number): Run | null {
  const edges = edgesAt(outline, row);
  const first = edges.first + border.left;
  const last = edges.last - border.right;
  return first > last ? null : { first: first as Slot, last: last as Slot };
}

/** The tier that a row of the fill lies in, the row within it, and the leftmost needle of the tier's place 0. */
export function tierOf(
  { firstRow, copy, origin, step }: FillPlace,
  row: number,
): { readonly tier: number; readonly copyRow: number; readonly origin: number } {
  const tier = Math.floor((row - firstRow) / copy.height);
  return { tier, copyRow: row - firstRow - tier * copy.height, origin: origin + tier * step };
}

/** First needles of the copies on the fill's first row, left to right, as far as they lie on it. */
export function firstNeedlesOf(place: FillPlace, outline: Outline): Slot[] {
  const run = fillRun(place, outline, place.firstRow);
  if (!run) return [];
  const { width } = place.copy;
  const needles: Slot[] = [];
  for (let needle = place.origin + Math.ceil((run.first - place.origin) / width) * width; needle <= run.last;) {
    needles.push(needle as Slot);
    needle += width;
  }
  return needles;
}
