/**
 * What the drawing measures, kept up to date without holding up the hand.
 *
 * A drawing of ordinary size is measured at once. A large one is measured by a
 * worker when the hand rests, and what was said last stands until then.
 */
import type { Grid } from '@shared/grid/index.ts';
import { measure, measureRoughly, type Measure } from '@shared/motif/repeat/index.ts';
import { ProblemError, problemOf, type Problem } from '@shared/problem/index.ts';
import type { Session } from '../session/session.ts';
import { WorkerClient, type Drawing } from '../worker/index.ts';
import { measureJob } from '../worker/jobs/measure.ts';

/** Cells measured in about a millisecond. */
const AT_ONCE = 10_000;
const REST_MS = 100;
/** Waits longer than this are told. */
const LATE_MS = 800;

const kept = new WeakMap<Grid, Measure>();
const client = new WorkerClient('measure', measureJob);

/** The measure of a drawing; computed once for each grid and ground. Of a large one it takes as long as it takes. */
export function measureOf({ grid, ground }: Drawing): Measure {
  const known = kept.get(grid);
  if (known?.ground === ground) return known;
  const measured = measure(grid, ground);
  kept.set(grid, measured);
  return measured;
}

/** True if measuring the drawing now would not be felt. */
export function isMeasuredAtOnce({ grid, ground }: Drawing): boolean {
  return grid.cells.length <= AT_ONCE || kept.get(grid)?.ground === ground;
}

/** What is asked of the worker. */
let asked: { readonly motif: Drawing; readonly measured: Promise<Measure | null>; giveUp(): void } | null = null;

/**
 * The measure of a drawing, of a large one from the worker; null if a later
 * drawing was asked for meanwhile. Rejects where it cannot be had.
 */
export function whenMeasured({ grid, ground }: Drawing): Promise<Measure | null> {
  const motif = { grid, ground };
  if (isMeasuredAtOnce(motif)) return Promise.resolve(measureOf(motif));
  if (asked?.motif.grid === grid && asked.motif.ground === ground) return asked.measured;
  asked?.giveUp();
  let giveUp = (): void => undefined;
  const measured = new Promise<Measure | null>((resolve, reject) => {
    giveUp = () => resolve(null);
    client.ask(motif, null, {
      answer: (answer) => {
        kept.set(grid, answer);
        resolve(answer);
      },
      failed: (problem) => reject(new ProblemError(problem)),
    });
  });
  const mine = { motif, measured, giveUp };
  asked = mine;
  const done = (): void => void (asked = asked === mine ? null : asked);
  measured.then(done, done);
  return measured;
}

/** The measure for a command, or null: what keeps it from being had is told. */
export async function measuredFor(session: Session, motif: Drawing): Promise<Measure | null> {
  try {
    return await whenMeasured(motif);
  } catch (thrown) {
    session.notify({ kind: 'problem', problem: problemOf(thrown) });
    return null;
  }
}

/** What can be said of a drawing right now: its measure, the one said `before` where it still fits, or the least. */
export function measureForNow(motif: Drawing, before: Measure | null): Measure {
  if (isMeasuredAtOnce(motif)) return measureOf(motif);
  const { grid, ground } = motif;
  return before?.width === grid.width && before.height === grid.height ? before : measureRoughly(grid, ground);
}

/**
 * Measures a large drawing once the hand rests. `done` is called with the
 * measure, `late` if it takes long, `failed` if it cannot be had. Returns a
 * function that gives up.
 */
export function measureDebounced(
  motif: Drawing,
  done: (measured: Measure) => void,
  late: () => void,
  failed: (problem: Problem) => void,
): () => void {
  if (isMeasuredAtOnce(motif)) {
    done(measureOf(motif));
    return () => undefined;
  }
  let isWanted = true;
  const lateness = setTimeout(late, LATE_MS);
  const rest = setTimeout(() => {
    whenMeasured(motif).then(
      (measured) => {
        if (!isWanted || !measured) return;
        clearTimeout(lateness);
        done(measured);
      },
      (thrown: unknown) => {
        clearTimeout(lateness);
        if (isWanted) failed(problemOf(thrown));
      },
    );
  }, REST_MS);
  return () => {
    isWanted = false;
    clearTimeout(lateness);
    clearTimeout(rest);
  };
}
