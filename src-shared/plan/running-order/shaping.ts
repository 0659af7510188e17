/**
 * Shaping, done before its row: loops first, then needles.
 *
 * One stitch at an edge is increased or decreased wherever the carriage
 * stands; more are cast on or off with the yarn at the carriage.
 */
import type { Run, Side, Slot } from '../../bed/index.ts';
import { needsCarriage } from '../../piece/index.ts';
import type { Obstacle } from './obstacles.ts';
import type { Work } from './work.ts';

/** Stitches that come (or, negative, go) at an edge before a row, and their needles. */
interface EdgeChange {
  readonly edge: Side;
  readonly stitches: number;
  readonly needles: Run;
}

/** Casts off what more than one stitch is taken at an edge. */
export function castOffAtEdges(work: Work): void {
  eachChange(work, (row, { edge, stitches, needles }) => {
    if (stitches < -1) work.do(row - 1, { kind: 'cast-off', edge, needles });
  });
}

export function shapeEdges(work: Work): void {
  eachChange(work, (row, { edge, stitches, needles }) => {
    if (stitches === -1) work.do(row - 1, { kind: 'decrease', edge, needles: [needles.first] });
  });
  eachChange(work, (row, { edge, stitches, needles }) => {
    if (stitches === 1) work.do(row - 1, { kind: 'increase', edge, needles: [needles.first] });
    else if (stitches > 1) work.do(row - 1, { kind: 'cast-on-more', edge, needles });
  });
}

/** What is made or cast off at the edge away from the carriage, where its yarn is not. */
export function shapingObstacles(work: Work): Obstacle[] {
  const obstacles: Obstacle[] = [];
  eachChange(work, (row, { edge, stitches }) => {
    if (needsCarriage(stitches, work.piece) && work.plan.rows[row - 1]?.from !== edge) {
      obstacles.push({ code: 'shaping-away-from-carriage', row, edge, stitches });
    }
  });
  return obstacles;
}

/** From the bottom up; asked with each cell that is painted, so by the outline, which takes least to read. */
function eachChange({ plan: { outline } }: Work, visit: (row: number, change: EdgeChange) => void): void {
  const { first: firsts, last: lasts } = outline;
  const run = (first: number, last: number): Run => ({ first: first as Slot, last: last as Slot });
  for (let index = 1; index < outline.rows; index++) {
    const [leftBefore, left] = [firsts[index - 1] as number, firsts[index] as number];
    const [rightBefore, right] = [lasts[index - 1] as number, lasts[index] as number];
    if (leftBefore !== left) {
      const needles = run(Math.min(leftBefore, left), Math.max(leftBefore, left) - 1);
      visit(index + 1, { edge: 'left', stitches: leftBefore - left, needles });
    }
    if (rightBefore !== right) {
      const needles = run(Math.min(rightBefore, right) + 1, Math.max(rightBefore, right));
      visit(index + 1, { edge: 'right', stitches: right - rightBefore, needles });
    }
  }
}
