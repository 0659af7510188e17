/** What shaping costs on a machine whose forward needles cannot be seen, and so not be pushed. */
import { edgesAt } from '../piece/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** `edges-unseen`: pattern rows whose edge needles would have been put right by hand, all of the piece in one finding. */
export function edgesUnseen({ piece, outline, rows, fills, endNeedleRows }: Inspected): Finding[] {
  if (piece.machine.chooses !== 'ahead-unseen') return [];
  const reachesEdges = (row: number): boolean =>
    endNeedleRows.has(row) || fills.some(({ firstRow, lastRow }) => firstRow <= row && row <= lastRow);
  const shaped = rows.filter(({ row, contrast }) => {
    if (row === 1 || contrast.length === 0 || !reachesEdges(row)) return false;
    const [before, now] = [edgesAt(outline, row - 1), edgesAt(outline, row)];
    return before.first !== now.first || before.last !== now.last;
  });
  const [first, last] = [shaped[0]?.row, shaped.at(-1)?.row];
  return first === undefined || last === undefined
    ? []
    : [{ code: 'edges-unseen', rows: [first, last], count: shaped.length }];
}
