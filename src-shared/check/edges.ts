/** Findings about the edges of the piece and what meets them. */
import type { Run, Side } from '../bed/index.ts';
import type { ClippedCopy } from '../fabric/index.ts';
import { figureRuns, type PlanRow } from '../plan/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** `cut-copies`: copies that are knitted and lose figure where the piece is narrower than their group. */
export function clippedCopies({ groups }: Inspected): Finding[] {
  return groups.flatMap(({ clipped, leftOut }, group) =>
    aboutCopies(
      'cut-copies',
      group,
      clipped.filter(({ index }) => !leftOut.has(index)),
    ),
  );
}

/** `copies-left-out`: copies that are not knitted, since the edge would clip them. */
export function copiesLeftOut({ groups }: Inspected): Finding[] {
  return groups.flatMap(({ clipped, leftOut }, group) =>
    aboutCopies(
      'copies-left-out',
      group,
      clipped.filter(({ index }) => leftOut.has(index)),
    ),
  );
}

function aboutCopies(
  code: 'cut-copies' | 'copies-left-out',
  group: number,
  clipped: readonly ClippedCopy[],
): Finding[] {
  if (clipped.length === 0) return [];
  const first = Math.min(...clipped.map(({ rows }) => rows[0]));
  const last = Math.max(...clipped.map(({ rows }) => rows[1]));
  return [{ code, rows: [first, last], copies: clipped.length, group }];
}

/**
 * `figure-in-seam`: figure vanishes into the seam, judged row by row by the
 * stitches that are knitted there, without those that only bind the contrast in.
 * What is blank in a copy may lie in the seam:
 * nothing of it was to be seen. One finding a band and side.
 */
export function figureInSeam({ piece, bands, groups, rows }: Inspected): Finding[] {
  return bands.flatMap((_, index) => {
    const places = groups.filter(({ band }) => band === index);
    return (['left', 'right'] as const).flatMap((side): Finding[] => {
      const allowance = piece.seamAllowance[side];
      let [first, last, deepest] = [Infinity, 0, 0];
      for (const { block, firstRow, lastRow } of places) {
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
