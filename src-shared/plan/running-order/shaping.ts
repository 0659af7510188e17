/**
 * Shaping, done before its row: loops first, then needles.
 *
 * One stitch at an edge is increased or decreased wherever the carriage
 * stands; more are cast on or off with the yarn at the carriage.
 */
import type { Run, Side, Slot } from '../../bed/index.ts';
import { needsCarriage } from '../../piece/index.ts';
import type { PlanRow } from '../types.ts';
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

function eachChange({ plan: { rows } }: Work, visit: (row: number, change: EdgeChange) => void): void {
  for (let index = 1; index < rows.length; index++) {
    const [before, now] = [rows[index - 1] as PlanRow, rows[index] as PlanRow];
    if (before.edges === now.edges) continue;
    const [left, right] = [before.edges.first - now.edges.first, now.edges.last - before.edges.last];
    if (left !== 0) {
      const [first, end] = [
        Math.min(before.edges.first, now.edges.first),
        Math.max(before.edges.first, now.edges.first),
      ];
      visit(now.row, { edge: 'left', stitches: left, needles: { first: first as Slot, last: (end - 1) as Slot } });
    }
    if (right !== 0) {
      const [end, last] = [Math.min(before.edges.last, now.edges.last), Math.max(before.edges.last, now.edges.last)];
      visit(now.row, { edge: 'right', stitches: right, needles: { first: (end + 1) as Slot, last: last as Slot } });
    }
  }
}
