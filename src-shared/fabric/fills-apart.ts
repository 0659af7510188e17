/** No two patterns on one needle of a row. */
import type { Run } from '../bed/index.ts';
import type { Outline } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import { fillRun } from './fill-place.ts';
import type { PlacedFill, PlacedGroup } from './types.ts';

/** Throws `fill-overlaps-band` or `fills-overlap` if a fill wants a needle that another pattern has on the same row. */
export function assertFillsApart(fills: readonly PlacedFill[], groups: readonly PlacedGroup[], outline: Outline): void {
  fills.forEach((place, index) => {
    for (const group of groups) {
      const rows = sharedRows(place, group, (row) => meet(fillRun(place, outline, row), group.block));
      if (rows) throw problemError('fill-overlaps-band', { fill: index + 1, band: group.band + 1, ...rows });
    }
    fills.slice(index + 1).forEach((other, after) => {
      const rows = sharedRows(place, other, (row) => meet(fillRun(place, outline, row), fillRun(other, outline, row)));
      if (rows) throw problemError('fills-overlap', { one: index + 1, other: index + after + 2, ...rows });
    });
  });
}

interface Rows {
  readonly firstRow: number;
  readonly lastRow: number;
}

/** The first and last row that both have and on which they meet, or null. */
function sharedRows(a: Rows, b: Rows, meetOn: (row: number) => boolean): { first: number; last: number } | null {
  let first = Math.max(a.firstRow, b.firstRow);
  let last = Math.min(a.lastRow, b.lastRow);
  while (first <= last && !meetOn(first)) first++;
  while (first <= last && !meetOn(last)) last--;
  return first > last ? null : { first, last };
}

function meet(a: Run | null, b: Run | null): boolean {
  return a !== null && b !== null && a.first <= b.last && b.first <= a.last;
}
