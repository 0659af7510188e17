/** Which copies of a fill are whole, which an edge clips, and which of those are knitted. */
import type { Outline } from '../piece/index.ts';
import type { ClippedCopies } from '../pattern/index.ts';
import { isLeftOut } from './clipped-copies.ts';
import { fillRun } from './fill-place.ts';
import type { FillCopies, FillPlace } from './types.ts';

/**
 * Counts the copies that have figure on the piece. A copy is clipped where figure
 * of it lies beside the piece, in the border, or above the last row. The cost
 * grows with the copies on each row and the two that its ends clip.
 */
export function copiesOfFill(place: FillPlace, outline: Outline, keeps: ClippedCopies): FillCopies {
  const { copy, firstRow, lastRow } = place;
  const inRows = figureInRows(place);
  const figure = inRows.reduce((sum, count) => sum + count, 0);
  let [whole, clipped, leftOut] = [0, 0, 0];
  let clippedRows: [number, number] | null = null;
  let leftOutRows: [number, number] | null = null;
  const without = new Map<number, Set<number>>();
  for (let tier = 0; firstRow + tier * copy.height <= lastRow; tier++) {
    const first = firstRow + tier * copy.height;
    const last = Math.min(lastRow, first + copy.height - 1);
    const { from, shown } = figureShown(place, outline, inRows, tier, last);
    shown.forEach((seen, index) => {
      if (seen === 0) return;
      if (seen === figure) whole++;
      else if (isLeftOut(figure - seen, figure, keeps)) {
        leftOut++;
        leftOutRows = [leftOutRows?.[0] ?? first, last];
        const places = without.get(tier) ?? new Set();
        without.set(tier, places.add(from + index));
      } else {
        clipped++;
        clippedRows = [clippedRows?.[0] ?? first, last];
      }
    });
  }
  return { whole, clipped, leftOut, clippedRows, leftOutRows, without };
}

/** Figure stitches of the copies of one tier that lie on the piece, from the place `from` on. */
function figureShown(
  place: FillPlace,
  outline: Outline,
  inRows: Int32Array,
  tier: number,
  lastRow: number,
): { readonly from: number; readonly shown: Int32Array } {
  const { ground, copy } = place;
  const { width, height, cells } = copy;
  const origin = place.origin + tier * place.step;
  const firstRow = place.firstRow + tier * height;
  let [leftmost, rightmost] = [Infinity, -Infinity];
  for (let row = firstRow; row <= lastRow; row++) {
    const run = fillRun(place, outline, row);
    if (!run) continue;
    leftmost = Math.min(leftmost, run.first);
    rightmost = Math.max(rightmost, run.last);
  }
  if (leftmost > rightmost) return { from: 0, shown: new Int32Array(0) };
  const from = Math.floor((leftmost - origin) / width);
  const shown = new Int32Array(Math.floor((rightmost - origin) / width) - from + 1);
  for (let row = firstRow; row <= lastRow; row++) {
    const run = fillRun(place, outline, row);
    if (!run) continue;
    const copyRow = row - firstRow;
    const last = Math.floor((run.last - origin) / width);
    for (let at = Math.floor((run.first - origin) / width); at <= last; at++) {
      const start = origin + at * width;
      let seen = inRows[copyRow] as number;
      if (start < run.first || start + width - 1 > run.last) {
        seen = 0;
        for (let needle = Math.max(start, run.first); needle <= Math.min(start + width - 1, run.last); needle++) {
          if (cells[copyRow * width + needle - start] !== ground) seen++;
        }
      }
      shown[at - from] = (shown[at - from] as number) + seen;
    }
  }
  return { from, shown };
}

/** Figure stitches in each row of a copy. */
function figureInRows({ copy: { width, height, cells }, ground }: FillPlace): Int32Array {
  const counts = new Int32Array(height);
  for (let index = 0; index < cells.length; index++) {
    const row = Math.floor(index / width);
    if (cells[index] !== ground) counts[row] = (counts[row] as number) + 1;
  }
  return counts;
}
