/**
 * What the drawing measures, kept up to date without holding up the hand.
 *
 * A drawing of ordinary size is measured at once. A large one is measured when
 * the hand rests, and what was said last stands until then.
 */
import type { Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/project/index.ts';
import { measure, type Measure } from '@shared/repeat/index.ts';

/** Cells measured in about a millisecond. */
const AT_ONCE = 10_000;
const REST_MS = 200;

const kept = new WeakMap<Grid, Measure>();

/** The measure of a drawing; computed once for each grid and ground. */
export function measureOf({ grid, ground }: Pick<Motif, 'grid' | 'ground'>): Measure {
  const known = kept.get(grid);
  if (known?.ground === ground) return known;
  const measured = measure(grid, ground);
  kept.set(grid, measured);
  return measured;
}

/** True if measuring the drawing now would not be felt. */
export function isMeasuredAtOnce({ grid, ground }: Pick<Motif, 'grid' | 'ground'>): boolean {
  return grid.cells.length <= AT_ONCE || kept.get(grid)?.ground === ground;
}

/** Calls `done` with the measure when nothing was asked for a while; returns a function that gives up. */
export function measureAtRest(motif: Pick<Motif, 'grid' | 'ground'>, done: (measured: Measure) => void): () => void {
  const timer = setTimeout(() => done(measureOf(motif)), REST_MS);
  return () => clearTimeout(timer);
}
