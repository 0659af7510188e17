/** Findings about the edges of the piece and what meets them. */
import type { Run, Side } from '../../bed/index.ts';
import type { LaidGroup } from '../../knitting/bands.ts';
import type { CutCopy } from '../../knitting/cut-copies.ts';
import type { PlanRow } from '../../knitting/types.ts';
import { longestBetween } from '../limit.ts';
import type { Finding } from '../types.ts';
import type { Inspected } from './question.ts';

/** `no-set-up-row`: pattern on row 1, before which nothing can be selected. */
export function noSetUpRow({ bands, fills }: Inspected): Finding[] {
  return [...bands, ...fills]
    .filter(({ setUpAt }) => setUpAt === null)
    .map(({ firstRow }) => ({ code: 'no-set-up-row', rows: [firstRow, firstRow] }));
}

/**
 * `contrast-to-edges`: end-needle selection is on, and a band leaves more plain
 * fabric beside or between its groups than a float may cross.
 */
export function contrastToEdges({ project, bands, gauges }: Inspected): Finding[] {
  const { endNeedleSelection, floatLimit } = project.piece;
  if (!endNeedleSelection) return [];
  return bands
    .filter(({ choices, taken, firstRow, lastRow }) => {
      const longest = longestBetween(floatLimit, gauges, firstRow, lastRow);
      const spaces = choices[taken]?.figure;
      return spaces !== undefined && [...spaces.margins, ...spaces.gaps].some((space) => space > longest);
    })
    .map(({ firstRow, lastRow }) => ({ code: 'contrast-to-edges', rows: [firstRow, lastRow] }));
}

/** `cut-copies`: copies that are knitted and lose figure where the piece is narrower than their group. */
export function cutCopies({ groups }: Inspected): Finding[] {
  return groups.flatMap(({ cut, leftOut }, group) =>
    aboutCopies(
      'cut-copies',
      group,
      cut.filter(({ index }) => !leftOut.has(index)),
    ),
  );
}

/** `copies-left-out`: copies that are not knitted, since the edge would cut them. */
export function copiesLeftOut({ groups }: Inspected): Finding[] {
  return groups.flatMap(({ cut, leftOut }, group) =>
    aboutCopies(
      'copies-left-out',
      group,
      cut.filter(({ index }) => leftOut.has(index)),
    ),
  );
}

function aboutCopies(code: 'cut-copies' | 'copies-left-out', group: number, cut: readonly CutCopy[]): Finding[] {
  if (cut.length === 0) return [];
  const first = Math.min(...cut.map(({ rows }) => rows[0]));
  const last = Math.max(...cut.map(({ rows }) => rows[1]));
  return [{ code, rows: [first, last], copies: cut.length, group }];
}

/** `figure-in-seam`: what is judged (figure or blocks) vanishes into the seam. One finding a band and side. */
export function figureInSeam(inspected: Inspected): Finding[] {
  const { project, bands, groups } = inspected;
  return bands.flatMap((_, index) => {
    const judge = project.bands[index]?.judge ?? 'figure';
    const mine = groups.filter(({ place }) => place.band === index);
    return (['left', 'right'] as const).flatMap((side) => seamFinding(inspected, mine, judge, side));
  });
}

function seamFinding(
  { project, rows }: Inspected,
  groups: readonly LaidGroup[],
  judge: 'figure' | 'blocks',
  side: Side,
): Finding[] {
  const allowance = project.piece.seamAllowance[side];
  if (allowance === 0) return [];
  let first = Infinity;
  let last = 0;
  let stitches = 0;
  for (const { place } of groups) {
    for (let row = place.firstRow; row <= place.lastRow; row++) {
      const planRow = rows[row - 1] as PlanRow;
      const judged = judge === 'blocks' ? place.block : outermostRun(planRow, place.block, side);
      const inSeam = judged === null ? 0 : stitchesInSeam(planRow.edges, judged, side, allowance);
      if (inSeam === 0) continue;
      first = Math.min(first, row);
      last = Math.max(last, row);
      stitches = Math.max(stitches, inSeam);
    }
  }
  return stitches === 0 ? [] : [{ code: 'figure-in-seam', rows: [first, last], side, stitches }];
}

/** The figure nearest to the edge, if it belongs to the block. */
function outermostRun({ contrast }: PlanRow, block: Run, side: Side): Run | null {
  const run = side === 'left' ? contrast[0] : contrast.at(-1);
  return run && run.first <= block.last && run.last >= block.first ? run : null;
}

/** How deep a run reaches into the seam allowance. */
function stitchesInSeam(edges: Run, run: Run, side: Side, allowance: number): number {
  const depth = side === 'left' ? edges.first + allowance - run.first : run.last - (edges.last - allowance);
  return Math.max(0, Math.min(allowance, depth));
}
