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
}

/**
 * The pace of the rows that were counted last, pauses left out; null where too
 * few were. `times`: when each row was counted, in ms, ascending. `rowsLeft` ≥ 0.
 */
export function paceOf(times: readonly number[], rowsLeft: number): Pace | null {
  const last = times.slice(-MOST_ROWS - 1);
  const took = last.slice(1).flatMap((time, index) => {
    const ms = time - (last[index] as number);
    return ms >= 0 && ms <= PAUSE_MS ? [ms] : [];
  });
  if (took.length < LEAST_ROWS) return null;
  const rowMs = took.reduce((sum, ms) => sum + ms, 0) / took.length;
  // Rows that are counted one on top of the other, as in a trial, have no pace.
  if (rowMs < 1000) return null;
  return { rowsAnHour: 3_600_000 / rowMs, leftMs: rowMs * rowsLeft };
}
