/**
 * The folded hem: eyelets along its fold, and its open loops hung one to a
 * needle when its last row is done. The row that joins it is knitted plain and
 * unshaped, and only then the waste yarn comes out.
 *
 * An open start on W needles leaves W − 1 whole loops and half a loop at each
 * edge. Of these the one is completed where the yarn turned after the first
 * row; at the other hangs its end (common practice, no source).
 */
import { opposite, widthOf, type Slot } from '../../bed/index.ts';
import type { Obstacle } from './obstacles.ts';
import type { Work } from './work.ts';

/** What hangs wrongly, or is asked of the row that joins a hem. */
export function hemObstacles(work: Work): Obstacle[] {
  const obstacles: Obstacle[] = [];
  const { join } = work;
  const last = join && work.row(join.at);
  if (!last) return obstacles;
  const needles = widthOf(last.edges);
  if (needles !== join.loops) obstacles.push({ code: 'hem-loops-differ', row: last.row, loops: join.loops, needles });
  const joining = work.row(join.at + 1);
  if (!joining) return obstacles;
  if (joining.carriage === 'pattern') obstacles.push({ code: 'pattern-on-joining-row', row: joining.row });
  const { first: left, last: right } = joining.edges;
  if (left !== last.edges.first || right !== last.edges.last) {
    obstacles.push({ code: 'shaping-on-joining-row', row: joining.row });
  }
  return obstacles;
}

export function hangHem(work: Work): void {
  const { join, piece, last } = work;
  if (!join) return;
  const { at, loops } = join;
  const needles = work.row(at)?.edges;
  if (!needles) return;
  if (piece.machine.weights) work.do(at, { kind: 'weights', do: 'off' });
  work.do(at, { kind: 'hang-hem', needles, loops, edgeLoop: opposite(piece.startSide) });
  if (at === last) work.do(at, { kind: 'remove-waste' });
  else if (piece.machine.weights) work.do(at, { kind: 'weights', do: 'hang' });
}

/** The waste yarn comes out once the joining row holds the hem. */
export function removeWaste(work: Work): void {
  if (work.join && work.join.at < work.last) work.do(work.join.at + 1, { kind: 'remove-waste' });
}

/** Before a turning row of eyelets every second needle gives its loop away; it knits a new one. */
export function makeEyelets(work: Work): void {
  const { piece, plan } = work;
  const back = plan.sections.find(({ name }) => name === 'hem-back');
  const row = back && work.row(back.last);
  if (!row || piece.hem.turning !== 'eyelets') return;
  const needles: Slot[] = [];
  for (let needle = row.edges.first + 1; needle < row.edges.last; needle += 2) needles.push(needle as Slot);
  if (needles.length > 0) work.do(row.row - 1, { kind: 'eyelets', needles });
}
