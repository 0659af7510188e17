/** Runs of needles that come again and again, told once. */
import type { Run, Slot } from './slot.ts';

/** Runs told one by one, or a few that come again every so many needles, the last of them ending on `last`. */
export type RunsTold =
  | { readonly kind: 'runs'; readonly runs: readonly Run[] }
  | { readonly kind: 'repeat'; readonly runs: readonly Run[]; readonly every: number; readonly last: Slot };

/** More runs than this are not read as one that comes again. */
const MOST_IN_REPEAT = 12;
/** Fewer times, or fewer runs in all, are told one by one. */
const LEAST_TIMES = 4;
const LEAST_RUNS = 8;

/**
 * Runs from left to right, those that come again in even steps taken together
 * as far as they go: at each run the repeat that reaches furthest, of those the
 * one of fewest runs. The last time may break off after any of its runs.
 */
export function regularRuns(runs: readonly Run[]): RunsTold[] {
  const told: RunsTold[] = [];
  let single: Run[] = [];
  let at = 0;
  while (at < runs.length) {
    const { size, end } = furthest(runs, at);
    if (end - at < leastOf(size)) {
      single.push(runs[at++] as Run);
      continue;
    }
    if (single.length > 0) told.push({ kind: 'runs', runs: single });
    single = [];
    told.push({
      kind: 'repeat',
      runs: runs.slice(at, at + size),
      every: (runs[at + size] as Run).first - (runs[at] as Run).first,
      last: (runs[end - 1] as Run).last,
    });
    at = end;
  }
  if (single.length > 0) told.push({ kind: 'runs', runs: single });
  return told;
}

/** The repeat from run `at` that reaches furthest: how many runs it has, and the first run beyond it. */
function furthest(runs: readonly Run[], at: number): { readonly size: number; readonly end: number } {
  let best = { size: 1, end: at + 1 };
  for (let size = 1; size <= MOST_IN_REPEAT && at + size < runs.length; size++) {
    const every = (runs[at + size] as Run).first - (runs[at] as Run).first;
    const comesAgain = (run: Run, before: Run): boolean =>
      run.first - before.first === every && run.last - before.last === every;
    let end = at + size;
    while (end < runs.length && comesAgain(runs[end] as Run, runs[end - size] as Run)) end++;
    if (end - at >= leastOf(size) && end > best.end) best = { size, end };
  }
  return best;
}

/** How many runs a repeat of `size` of them must reach over to be worth telling. */
function leastOf(size: number): number {
  return Math.max(LEAST_RUNS, LEAST_TIMES * size);
}
