/** No two patterns on one needle of a row. */
import { copiesOf } from '../pattern/index.ts';
import type { Outline } from '../piece/index.ts';
import { problemError, type ProblemError } from '../problem/index.ts';
import { runOn, type Rows } from './copies.ts';
import type { CopiesPlace, PlacedPattern } from './types.ts';

/**
 * Throws `bands-overlap`, `fill-overlaps-band` or `fills-overlap` if two
 * patterns want the same needle on the same row.
 */
export function assertApart(patterns: readonly PlacedPattern[], outline: Outline): void {
  patterns.forEach((one, index) => {
    for (const other of patterns.slice(index + 1)) {
      if (one.firstRow > other.lastRow || other.firstRow > one.lastRow) continue;
      for (const a of copiesOf(one)) {
        for (const b of copiesOf(other)) {
          const rows = rowsMet(a, b, outline);
          if (rows) throw overlap(one, other, rows);
        }
      }
    }
  });
}

/** What says which needles copies want on which rows. */
type Wanted = Pick<CopiesPlace, 'firstRow' | 'lastRow' | 'block' | 'border'>;

/** The first and last row on which both want the same needle, or null. */
export function rowsMet(a: Wanted, b: Wanted, outline: Outline): Rows | null {
  if (a.block && b.block && (a.block.first > b.block.last || b.block.first > a.block.last)) return null;
  const meetOn = (row: number): boolean => {
    // A block is wanted as a whole, beside the piece too.
    const [one, other] = [a.block ?? runOn(a, outline, row), b.block ?? runOn(b, outline, row)];
    return one !== null && other !== null && one.first <= other.last && other.first <= one.last;
  };
  let first = Math.max(a.firstRow, b.firstRow);
  let last = Math.min(a.lastRow, b.lastRow);
  while (first <= last && !meetOn(first)) first++;
  while (first <= last && !meetOn(last)) last--;
  return first > last ? null : { first, last };
}

function overlap(one: PlacedPattern, other: PlacedPattern, rows: Rows): ProblemError {
  const numbers = { one: one.number + 1, other: other.number + 1, ...rows };
  if (one.kind === other.kind) return problemError(one.kind === 'band' ? 'bands-overlap' : 'fills-overlap', numbers);
  const [band, allOver] = one.kind === 'band' ? [numbers.one, numbers.other] : [numbers.other, numbers.one];
  return problemError('fill-overlaps-band', { allOver, band, ...rows });
}
