/** What shaping costs on a machine whose forward needles cannot be seen, and so not be pushed. */
import { makeFabric, withEndNeedles } from '../fabric/index.ts';
import { edgesAt } from '../piece/index.ts';
import { copiesIn } from '../pattern/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** Own balls are laid by hand, which such a machine cannot knit at all. */
const NONE_PARTED: ReadonlySet<number> = new Set();

/**
 * `edges-unseen`: shaped rows that a machine whose needles can be seen would
 * knit otherwise, because its edge needles are put right by hand; all of the
 * piece in one finding.
 */
export function edgesUnseen({ piece, plan, outline, fabric, endNeedleRows }: Inspected): Finding[] {
  if (piece.machine.chooses !== 'ahead-unseen') return [];
  const drawn = makeFabric(outline, copiesIn(plan), piece.mainYarn);
  const seen = withEndNeedles(drawn, outline, piece.mainYarn, endNeedleRows, NONE_PARTED, 'ahead-seen').fabric;
  const missed: number[] = [];
  for (let row = 2; row <= fabric.rows; row++) {
    const [before, now] = [edgesAt(outline, row - 1), edgesAt(outline, row)];
    if (before.first === now.first && before.last === now.last) continue;
    const start = (row - 1) * fabric.width;
    const knitted = fabric.cells.subarray(start, start + fabric.width);
    if (knitted.some((yarn, at) => yarn !== seen.cells[start + at])) missed.push(row);
  }
  const [first, last] = [missed[0], missed.at(-1)];
  return first === undefined || last === undefined
    ? []
    : [{ code: 'edges-unseen', rows: [first, last], count: missed.length }];
}
