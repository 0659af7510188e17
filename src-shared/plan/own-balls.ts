/** The groups that have balls of their own, and the needles that are knitted from these. */
import type { PlacedGroup } from '../fabric/index.ts';
import { bandsOf } from '../pattern/index.ts';
import { needlesTaken, type Outline } from '../piece/index.ts';
import type { KnitPiece } from '../project/index.ts';
import type { OwnBall } from '../strands/index.ts';

/**
 * The groups with a ball of their own. On rows where no other group lies
 * further out on a side, the ball reaches as far as the piece does there, so
 * that an edge needle is knitted from it.
 */
export function ownBallsOf(piece: KnitPiece, groups: readonly PlacedGroup[], outline: Outline): OwnBall[] {
  const given = bandsOf(piece).flatMap((band) => band.groups);
  const taken = needlesTaken(outline);
  return groups.flatMap((own, group) => {
    if (!given[group]?.hasOwnBall) return [];
    return stretchesOf(own, groups).map(({ firstRow, lastRow }) => {
      const beside = groups.filter((other) => other.firstRow <= lastRow && firstRow <= other.lastRow);
      const isLeftmost = beside.every(({ block }) => block.first >= own.block.first);
      const isRightmost = beside.every(({ block }) => block.last <= own.block.last);
      const first = isLeftmost && taken.first < own.block.first ? taken.first : own.block.first;
      const last = isRightmost && taken.last > own.block.last ? taken.last : own.block.last;
      return { group, first, last, firstRow, lastRow };
    });
  });
}

/** The rows of a group, parted where another begins or ends. */
function stretchesOf(
  { firstRow, lastRow }: PlacedGroup,
  groups: readonly PlacedGroup[],
): { readonly firstRow: number; readonly lastRow: number }[] {
  const begins = new Set([firstRow, ...groups.flatMap((other) => [other.firstRow, other.lastRow + 1])]);
  const inside = [...begins].filter((row) => row >= firstRow && row <= lastRow).sort((a, b) => a - b);
  return inside.map((row, index) => ({ firstRow: row, lastRow: (inside[index + 1] ?? lastRow + 1) - 1 }));
}

/** The rows (1-based) on which any of them is in use. */
export function rowsOfBalls(balls: readonly OwnBall[]): ReadonlySet<number> {
  const rows = new Set<number>();
  for (const { firstRow, lastRow } of balls) for (let row = firstRow; row <= lastRow; row++) rows.add(row);
  return rows;
}
