/** When a machine is set up for the first row of a pattern. */
import type { Machine } from '../bed/index.ts';

/**
 * The reading at which the first row of a pattern is set, so that the pass of
 * the row before it chooses its needles; null where no row comes before, and
 * where needles are chosen by hand, row by row.
 */
export function setUpBefore(firstRow: number, { chooses }: Pick<Machine, 'chooses'>): number | null {
  return firstRow >= 2 && chooses !== 'by-hand' ? firstRow - 2 : null;
}
