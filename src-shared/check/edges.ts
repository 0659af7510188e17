/** Findings about the edges of the piece and what meets them. */
import type { Run, Side } from '../bed/index.ts';
import { rowsOfTier, type ClippedCopy } from '../fabric/index.ts';
import { bandsOf, copiesOf } from '../pattern/index.ts';
import { figureRuns, type PlanRow } from '../plan/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/**
 * `cut-copies` and `fill-cut`: copies that are knitted and lose figure where
 * the piece is narrower than their group, or at the edges of an all-over;
 * `copies-left-out` and `fill-left-out`: copies that are not knitted, since an
 * edge would clip them. That edges clip an all-over is in its nature: it is
 * noted, not warned of.
 */
export function clippedCopies({ patterns, groups }: Inspected): Finding[] {
  return patterns.flatMap(copiesOf).flatMap((place) =>
    (['clipped', 'leftOut'] as const).flatMap((what): Finding[] => {
      const [first, last] = [place[what][0], place[what].at(-1)];
      if (!first || !last) return [];
      const copies = place[what].length;
      if ('across' in place) {
        const code = what === 'clipped' ? 'cut-copies' : 'copies-left-out';
        return [{ code, rows: rowsLosing(place[what]), copies, group: groups.indexOf(place) }];
      }
      const code = what === 'clipped' ? 'fill-cut' : 'fill-left-out';
      const rows = [rowsOfTier(place, first.tier).first, rowsOfTier(place, last.tier).last] as const;
      return [{ code, rows, copies, whole: place.whole, allOver: place.number }];
    }),
  );
}

/** The first and last row on which the copies lose figure. */
function rowsLosing(clipped: readonly ClippedCopy[]): Finding['rows'] {
  return [Math.min(...clipped.map(({ rows }) => rows[0])), Math.max(...clipped.map(({ rows }) => rows[1]))];
}

/**
 * `figure-in-seam`: figure vanishes into the seam, judged row by row by the
 * stitches that are knitted there, without those that only bind the contrast in.
 * What is blank in a copy may lie in the seam:
 * nothing of it was to be seen. One finding a band and side.
 */
export function figureInSeam({ piece, plan, rows }: Inspected): Finding[] {
  return bandsOf(plan).flatMap(({ groups }) => {
    return (['left', 'right'] as const).flatMap((side): Finding[] => {
      const allowance = piece.seamAllowance[side];
      let [first, last, deepest] = [Infinity, 0, 0];
      for (const { block, firstRow, lastRow } of groups) {
        for (const row of rows.slice(firstRow - 1, lastRow)) {
          const depth = depthInSeam(row, block, side, allowance);
          if (depth <= 0) continue;
          first = Math.min(first, row.row);
          last = Math.max(last, row.row);
          deepest = Math.max(deepest, depth);
        }
      }
      return deepest === 0 ? [] : [{ code: 'figure-in-seam', rows: [first, last], side, stitches: deepest }];
    });
  });
}

/** How far the outermost figure stitch of a block reaches beyond the seam line on a row; 0 or less where it does not. */
function depthInSeam(row: PlanRow, block: Run, side: Side, allowance: number): number {
  const { edges } = row;
  const figure = figureRuns(row);
  const isInBlock = (run: Run): boolean => run.first <= block.last && run.last >= block.first;
  if (side === 'left') {
    const run = figure.find(isInBlock);
    return run ? edges.first + allowance - Math.max(run.first, block.first) : 0;
  }
  const run = figure.findLast(isInBlock);
  return run ? Math.min(run.last, block.last) - (edges.last - allowance) : 0;
}
