/** Findings about fills. That edges clip an all-over pattern is in its nature: it is noted, not warned of. */
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
