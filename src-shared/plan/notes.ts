/** What the knitter must know at a row beyond its needles. */
import type { Run } from '../bed/index.ts';
import type { HemNote } from './hem-notes.ts';
import type { Plan } from './types.ts';

export type RowNote =
  | { readonly code: 'cast-on'; readonly edges: Run }
  /** The needles at work change before this row. */
  | { readonly code: 'edges'; readonly before: Run; readonly edges: Run }
  /** From this row up to `last` the piece has needles that the bed has not. */
  | { readonly code: 'leaves-bed'; readonly first: number; readonly last: number; readonly bed: Run }
  /** The needles of `forRow` are selected while this row is knitted plain. */
  | { readonly code: 'set-up'; readonly forRow: number }
  | { readonly code: 'pattern-begins' }
  | { readonly code: 'pattern-ends' }
  | HemNote;

/** The notes of each row (index 0 is row 1), in the order in which they matter. */
export function rowNotes(plan: Plan): RowNote[][] {
  const notes: RowNote[][] = plan.rows.map(() => []);
  const add = (row: number, note: RowNote): void => void notes[row - 1]?.push(note);

  let before: Run | null = null;
  for (const { row, edges } of plan.rows) {
    if (before === null) add(row, { code: 'cast-on', edges });
    else if (before.first !== edges.first || before.last !== edges.last) add(row, { code: 'edges', before, edges });
    before = edges;
  }
  if (plan.beyondBed) {
    const { spans, bed } = plan.beyondBed;
    for (const [first, last] of spans) add(first, { code: 'leaves-bed', first, last, bed });
  }
  const patterns = [...plan.bands, ...plan.fills];
  /** Of patterns that touch, the upper has its needles selected while the lower is knitted: that row is not plain. */
  const isPatterned = (row: number): boolean => patterns.some((one) => one.firstRow <= row && row <= one.lastRow);
  for (const { firstRow, lastRow } of patterns) {
    if (!isPatterned(firstRow - 1)) add(firstRow - 1, { code: 'set-up', forRow: firstRow });
    add(firstRow, { code: 'pattern-begins' });
    add(lastRow, { code: 'pattern-ends' });
  }
  for (const { row, note } of plan.hem) add(row, note);
  return notes;
}
