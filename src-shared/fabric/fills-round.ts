/** How the fills of a closed piece meet in its seam, on the rows that are seen. */
import type { Tube } from '../piece/index.ts';
import { seamMatchingOf, type SeamMeeting, type SeamRun } from './seam-matching/matching.ts';
import type { PlacedPatterns } from './types.ts';

/** What is seen of a fill at the seam. */
export interface FillRound {
  readonly rows: { readonly first: number; readonly last: number };
  /** How many of its rows meet, either way; how many are plain at the seam. */
  readonly matching: number;
  readonly plain: number;
  /** Where it does not go on across the seam, and by how many stitches it is off. */
  readonly off: readonly OffRun[];
  /** The same rows whatever they are off by, each stretch of them once. */
  readonly offRows: readonly { readonly first: number; readonly last: number }[];
}

/** Neighbouring rows that are off alike; stitches too many at the seam, negative for too few. */
export interface OffRun {
  readonly first: number;
  readonly last: number;
  readonly by: number;
}

/** Each fill as it is seen; null where all of it lies inside. */
export function fillsRound(patterns: PlacedPatterns, tube: Tube): (FillRound | null)[] {
  const lowest = tube.rings[0]?.row ?? Infinity;
  return patterns.fills.map(({ firstRow, lastRow }, fill) => {
    if (lastRow < lowest) return null;
    const runs = seamMatchingOf(patterns, fill)
      .runs.filter(({ last }) => last >= lowest)
      .map((run) => ({ ...run, first: Math.max(run.first, lowest) }));
    const rowsOf = (...kinds: SeamMeeting['kind'][]): number =>
      runs.reduce((sum, run) => sum + (kinds.includes(run.meeting.kind) ? run.last - run.first + 1 : 0), 0);
    const off = runs.flatMap(offRun);
    return {
      rows: { first: Math.max(firstRow, lowest), last: lastRow },
      matching: rowsOf('continues', 'mirrors'),
      plain: rowsOf('plain'),
      off,
      offRows: joined(off),
    };
  });
}

function offRun({ first, last, meeting }: SeamRun): OffRun[] {
  return meeting.kind === 'off' ? [{ first, last, by: meeting.by }] : [];
}

function joined(runs: readonly OffRun[]): { first: number; last: number }[] {
  const stretches: { first: number; last: number }[] = [];
  for (const { first, last } of runs) {
    const before = stretches.at(-1);
    if (before && before.last + 1 === first) before.last = last;
    else stretches.push({ first, last });
  }
  return stretches;
}
