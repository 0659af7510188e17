/** Findings about fills. That edges clip an all-over pattern is in its nature: it is noted, not warned of. */
import { longestBetween } from '../strands/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** `fill-cut`: copies that are knitted as far as the edges let them. */
export function fillsClipped({ fills }: Inspected): Finding[] {
  return fills.flatMap(({ fill, copies: { clipped, clippedRows, whole } }): Finding[] =>
    clippedRows === null ? [] : [{ code: 'fill-cut', rows: clippedRows, copies: clipped, whole, fill }],
  );
}

/** `fill-left-out`: copies that are not knitted, since an edge would clip them. */
export function fillsLeftOut({ fills }: Inspected): Finding[] {
  return fills.flatMap(({ fill, copies: { leftOut, leftOutRows, whole } }): Finding[] =>
    leftOutRows === null ? [] : [{ code: 'fill-left-out', rows: leftOutRows, copies: leftOut, whole, fill }],
  );
}

/** `contrast-to-edges`: end-needle selection is on, and a fill keeps more stitches plain at an edge than a float may cross. */
export function plainBesideFills({ piece, fills, gauges }: Inspected): Finding[] {
  return fills
    .filter(({ fill, border, firstRow, lastRow }) => {
      if (!piece.fills[fill]?.endNeedles) return false;
      const longest = longestBetween(piece.floatLimit, gauges, firstRow, lastRow);
      return Math.max(border.left, border.right) > longest;
    })
    .map(({ firstRow, lastRow }) => ({ code: 'contrast-to-edges', rows: [firstRow, lastRow] }));
}
