/** How fast a piece is knitted, told from when its rows were counted. */

/** Longer between two rows than this is a pause, in ms: it says nothing of the pace. */
export const PAUSE_MS = 5 * 60_000;
/** So many rows back at most: what was done last is what is done next. */
const MOST_ROWS = 40;
/** Fewer rows than these say nothing. */
const LEAST_ROWS = 5;

export interface Pace {
  readonly rowsAnHour: number;
  /** For the rows that are left, at this pace and without pauses, in ms. */
  readonly leftMs: number;
  /** How many pauses were left out of it. */
  readonly pauses: number;
}

/**
 * The pace of the rows that were counted last, pauses left out; null where too
 * few were. `times`: when each row was counted, in ms, ascending. `rowsLeft` ≥ 0.
 */
export function paceOf(times: readonly number[], rowsLeft: number): Pace | null {
  const last = times.slice(-MOST_ROWS - 1);
  const took = last.slice(1).flatMap((time, index) => {
    const before = last[index] as number;
    return isAtOneGo(before, time) ? [time - before] : [];
  });
  if (took.length < LEAST_ROWS) return null;
  const rowMs = took.reduce((sum, ms) => sum + ms, 0) / took.length;
  // Rows that are counted one on top of the other, as in a trial, have no pace.
  if (rowMs < 1000) return null;
  return { rowsAnHour: 3_600_000 / rowMs, leftMs: rowMs * rowsLeft, pauses: last.length - 1 - took.length };
}

/** So long at one go is long enough, in ms (common practice, no source). */
export const REST_AFTER_MS = 45 * 60_000;

/** How long a person has knitted at one go when the last row was counted, in ms: since the last pause, or the first row. */
export function atOneGo(times: readonly number[]): number {
  let first = times.length - 1;
  while (first > 0 && isAtOneGo(times[first - 1] as number, times[first] as number)) first--;
  return times.length === 0 ? 0 : (times.at(-1) as number) - (times[first] as number);
}

function isAtOneGo(before: number, time: number): boolean {
  return time >= before && time - before <= PAUSE_MS;
}
