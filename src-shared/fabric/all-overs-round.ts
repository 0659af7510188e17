/** How the all-overs of a closed piece meet in its seam, on the rows that are seen. */
import { allOversOf } from '../pattern/index.ts';
import type { Tube } from '../piece/index.ts';
import { seamMatchingOf, type SeamMatching } from './seam-matching/matching.ts';
import type { PlacedPatterns } from './types.ts';

/** What is seen of an all-over at the seam. */
export interface AllOverRound {
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

/** Each all-over as it is seen; null where all of it lies inside. */
export function allOversRound(patterns: PlacedPatterns, tube: Tube): (AllOverRound | null)[] {
  const lowest = tube.rings[0]?.row ?? Infinity;
  return allOversOf(patterns).map((allOver) => {
    const { firstRow, lastRow } = allOver;
    if (lastRow < lowest) return null;
    const seam = seamMatchingOf(allOver, patterns.outline, lowest);
    const broken = seam.runs.flatMap(({ first, last, meeting }): BrokenRun[] => {
      if (meeting.kind === 'off') return [{ first, last, by: meeting.by }];
      return meeting.kind === 'mirrors' ? [{ first, last, by: null }] : [];
    });
    return { rows: { first: Math.max(firstRow, lowest), last: lastRow }, seam, broken };
  });
}
