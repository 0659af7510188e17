/** Rows that hold more than two yarns: a machine with two feeders knits each of them in more than one pass. */
import type { Grid } from '../grid/index.ts';

/** The rows of the drawing with more than two yarns, from the bottom. One look at every cell. */
export function rowsOfManyYarns({ width, height, cells }: Grid): number[] {
  const rows: number[] = [];
  for (let row = 0; row < height; row++) {
    const start = row * width;
    const first = cells[start];
    let second = first;
    for (let at = start + 1; at < start + width; at++) {
      const cell = cells[at];
      if (cell === first || cell === second) continue;
      if (second !== first) {
        rows.push(row);
        break;
      }
      second = cell;
    }
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
