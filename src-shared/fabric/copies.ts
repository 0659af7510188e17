/** Which needles placed copies have in a row, and where each of them begins. */
import type { Run, Slot } from '../bed/index.ts';
import { edgesAt, type Outline } from '../piece/index.ts';
import type { CopiesPlace } from './types.ts';

/** The needles of a row that are the copies', as far as the piece and their border leave them any; else null. */
export function runOn(
  { block, border }: Pick<CopiesPlace, 'block' | 'border'>,
  outline: Outline,
  row: number,
): Run | null {
  const edges = edgesAt(outline, row);
  const first = Math.max(edges.first + border.left, block?.first ?? -Infinity);
  const last = Math.min(edges.last - border.right, block?.last ?? Infinity);
  return first > last ? null : { first: first as Slot, last: last as Slot };
}

/** The tier that a row of the copies lies in, the row within it, and the leftmost needle of the tier's place 0. */
export function tierOf(
  { firstRow, copy, origin, step }: CopiesPlace,
  row: number,
): { readonly tier: number; readonly copyRow: number; readonly origin: number } {
  const tier = Math.floor((row - firstRow) / copy.height);
  return { tier, copyRow: row - firstRow - tier * copy.height, origin: origin + tier * step };
}

/** First and last row. */
export interface Rows {
  readonly first: number;
  readonly last: number;
}

/** The rows of a tier, as far as they are knitted. */
export function rowsOfTier({ firstRow, lastRow, copy }: CopiesPlace, tier: number): Rows {
  const first = firstRow + tier * copy.height;
  return { first, last: Math.min(lastRow, first + copy.height - 1) };
}

/** First needles of the copies on their first row, left to right, as far as they lie on it. */
export function firstNeedlesOf(place: CopiesPlace, outline: Outline): Slot[] {
  const run = runOn(place, outline, place.firstRow);
  if (!run) return [];
  const { width } = place.copy;
  const needles: Slot[] = [];
  for (let needle = place.origin + Math.ceil((run.first - place.origin) / width) * width; needle <= run.last;) {
    needles.push(needle as Slot);
    needle += width;
  }
  return needles;
}
