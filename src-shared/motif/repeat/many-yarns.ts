/** Rows that hold more than two yarns: a machine with two feeders knits each of them in more than one pass. */
import type { Grid } from '../../grid/index.ts';
import { bitCount } from './bit-planes.ts';

/** The rows of the drawing with more than two yarns, from the bottom. One look at every cell. */
export function rowsOfManyYarns({ width, height, cells }: Grid): number[] {
  const rows: number[] = [];
  for (let row = 0, at = 0; row < height; row++) {
    // A bit a yarn, in two words; branching on every cell would cost five times as much.
    let low = 0;
    let high = 0;
    for (const end = at + width; at < end; at++) {
      const cell = cells[at] as number;
      if (cell < 32) low |= 1 << cell;
      else high |= 1 << (cell - 32);
    }
    if (bitCount(low) + bitCount(high) > 2) rows.push(row);
  }
  return rows;
}

/** Runs of neighbours in ascending numbers: 3, 4, 5, 9 are 3–5 and 9–9. */
export function runsOf(numbers: readonly number[]): { first: number; last: number }[] {
  const runs: { first: number; last: number }[] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run?.last === number - 1) run.last = number;
    else runs.push({ first: number, last: number });
  }
  return runs;
}
