/** How the fills of a closed piece meet in its seam, on the rows that are seen. */
import type { Tube } from '../piece/index.ts';
import { seamMatchingOf, type SeamMatching } from './seam-matching/matching.ts';
import type { PlacedPatterns } from './types.ts';

/** What is seen of a fill at the seam. */
export interface FillRound {
  readonly rows: { readonly first: number; readonly last: number };
  /** Of the rows that are seen alone. */
  readonly seam: SeamMatching;
  /** Where it does not go on across the seam. */
  readonly broken: readonly BrokenRun[];
}

/** Neighbouring rows that do not go on alike. */
export interface BrokenRun {
  readonly first: number;
  readonly last: number;
  /** Stitches too many at the seam, negative for too few; null where the rows are mirrored in it. */
  readonly by: number | null;
}

/** Each fill as it is seen; null where all of it lies inside. */
export function fillsRound(patterns: PlacedPatterns, tube: Tube): (FillRound | null)[] {
  const lowest = tube.rings[0]?.row ?? Infinity;
  return patterns.fills.map(({ firstRow, lastRow }, fill) => {
    if (lastRow < lowest) return null;
    const seam = seamMatchingOf(patterns, fill, lowest);
    const broken = seam.runs.flatMap(({ first, last, meeting }): BrokenRun[] => {
      if (meeting.kind === 'off') return [{ first, last, by: meeting.by }];
      return meeting.kind === 'mirrors' ? [{ first, last, by: null }] : [];
    });
    return { rows: { first: Math.max(firstRow, lowest), last: lastRow }, seam, broken };
  });
}
