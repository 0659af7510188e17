/**
 * What the drawing measures, kept up to date without holding up the hand.
 *
 * A drawing of ordinary size is measured at once. A large one is measured by a
 * worker when the hand rests, and what was said last stands until then.
 */
import type { Grid } from '@shared/grid/index.ts';
import { measure, measureRoughly, type Measure } from '@shared/motif/repeat/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { MeasureClient } from './measuring/measure-client.ts';
import MeasuringWorker from './measuring/worker.ts?worker&inline';

/** Cells measured in about a millisecond. */
const AT_ONCE = 10_000;
const REST_MS = 100;
/** Waits longer than this are told. */
const LATE_MS = 800;

type Drawing = Pick<Motif, 'grid' | 'ground'>;

const kept = new WeakMap<Grid, Measure>();
const client = new MeasureClient(() => new MeasuringWorker());

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

/** The measure of a drawing, of a large one from the worker; null if a later drawing was asked for meanwhile. */
export async function whenMeasured(motif: Drawing): Promise<Measure | null> {
  if (isMeasuredAtOnce(motif)) return measureOf(motif);
  const measured = await client.measure(motif.grid, motif.ground);
  if (measured) kept.set(motif.grid, measured);
  return measured;
}

/** What can be said of a drawing right now: its measure, the one said `before` where it still fits, or the least. */
export function measureForNow(motif: Drawing, before: Measure | null): Measure {
  if (isMeasuredAtOnce(motif)) return measureOf(motif);
  const { grid, ground } = motif;
  return before?.width === grid.width && before.height === grid.height ? before : measureRoughly(grid, ground);
}

/**
 * Measures a large drawing once the hand rests. `done` is called with the
 * measure, `late` if it takes long. Returns a function that gives up.
 */
export function measureDebounced(motif: Drawing, done: (measured: Measure) => void, late: () => void): () => void {
  if (isMeasuredAtOnce(motif)) {
    done(measureOf(motif));
    return () => undefined;
  }
  let isWanted = true;
  const lateness = setTimeout(late, LATE_MS);
  const rest = setTimeout(() => {
    void whenMeasured(motif).then((measured) => {
      if (!isWanted || !measured) return;
      clearTimeout(lateness);
      done(measured);
    });
  }, REST_MS);
  return () => {
    isWanted = false;
    clearTimeout(lateness);
    clearTimeout(rest);
  };
}
